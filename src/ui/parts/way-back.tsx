import type { JSX } from 'solid-js';
import { ways } from '../../words/ways.ts';
import { addressOf, type Place } from '../router.ts';

/** A message where a screen cannot be shown, and the way back: an installed app has no address bar. */
export function WayBack(props: { readonly children: JSX.Element }): JSX.Element {
  return (
    <main class="opening">
      <p role="alert">{props.children}</p>
      <p>
        <a class="button" href={addressOf({ kind: 'start' })}>
          {ways.allSessions}
        </a>
      </p>
    </main>
  );
}

/** The way back from a page that is opened from a job, from the page before the work, or from the start. */
export function BackLink(props: { readonly session: string | null; readonly isPreparing?: boolean }): JSX.Element {
  const back = (): { readonly to: Place; readonly words: string } => {
    if (props.session !== null) return { to: { kind: 'work', session: props.session }, words: ways.backToJob };
    return props.isPreparing === true
      ? { to: { kind: 'prepare' }, words: ways.backToPreparation }
      : { to: { kind: 'start' }, words: ways.backToStart };
  };
  return (
    <a class="button" href={addressOf(back().to)}>
      {back().words}
    </a>
  );
}
