/** Newer versions of the program: one is fetched beside the work, and taken when a person says so and no session is open. */
import { createSignal, type Accessor } from 'solid-js';
import { isSessionOpen } from '../storage/pen.ts';

export interface Versions {
  /** A newer version is here, whole, and waits. */
  readonly isWaiting: Accessor<boolean>;
  /**
   * Takes it and loads the page again; not while a window of this browser writes a session, since no version changes under
   * a job. Left alone, it is taken when all windows of the app were closed.
   */
  take(): Promise<'taken' | 'a session is open'>;
}

type Workers = Pick<ServiceWorkerContainer, 'controller' | 'register' | 'addEventListener'>;

interface Fittings {
  /** Undefined where the browser has none: then there is no version but the one that the server sends. */
  readonly workers: Workers | undefined;
  readonly isSessionOpen: () => Promise<boolean>;
  readonly reload: () => void;
}

const ofBrowser = (): Fittings => ({
  workers: import.meta.env.MODE === 'production' && 'serviceWorker' in navigator ? navigator.serviceWorker : undefined,
  isSessionOpen,
  reload: () => location.reload(),
});

/** @param ready the first installation waits for it: its files would come over the same line as the speech model */
export function createVersions(ready: Promise<unknown>, fittings: Fittings = ofBrowser()): Versions {
  const { workers, reload } = fittings;
  const [waiting, setWaiting] = createSignal<ServiceWorker | null>(null);

  function watch(registration: ServiceWorkerRegistration): void {
    // Without a controller it is the first one, and there is nothing older that it could replace.
    const look = (): void => void (workers?.controller && setWaiting(registration.waiting));
    look();
    registration.addEventListener('updatefound', () => {
      registration.installing?.addEventListener('statechange', look);
    });
  }

  async function register(): Promise<void> {
    if (workers === undefined) return;
    if (workers.controller === null) await ready.catch(() => undefined);
    // Refused, as in a private window: the app runs as long as the server does.
    await workers.register('./sw.js').then(watch, () => undefined);
  }
  void register();

  return {
    isWaiting: () => waiting() !== null,
    async take() {
      if (await fittings.isSessionOpen()) return 'a session is open';
      workers?.addEventListener('controllerchange', () => reload(), { once: true });
      // The word that the generated service worker knows.
      waiting()?.postMessage({ type: 'SKIP_WAITING' });
      return 'taken';
    },
  };
}
