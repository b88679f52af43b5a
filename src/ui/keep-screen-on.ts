import { onCleanup } from 'solid-js';

/** The mechanic has no hand free to wake a screen. The lock is lost when the page is hidden, so it is taken again. */
export function keepScreenOn(): void {
  const take = (): void => {
    if (document.visibilityState === 'visible') void navigator.wakeLock?.request('screen').catch(() => undefined);
  };
  take();
  document.addEventListener('visibilitychange', take);
  onCleanup(() => document.removeEventListener('visibilitychange', take));
}
