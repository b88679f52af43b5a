import type { JSX } from 'solid-js';
import { ways } from '../../words/ways.ts';
import { addressOf } from '../router.ts';

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
