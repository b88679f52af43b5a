import { Show, type JSX } from 'solid-js';
import '../second.css';
import { secondWindow } from '../../words/second-window.ts';
import { addressOf } from '../router.ts';

/** The way to the second person's window, and what came from there that nobody can mean. */
export function SecondLink(props: { readonly session: string; readonly dropped: string | null }): JSX.Element {
  return (
    <>
      <a href={addressOf({ kind: 'second', session: props.session })} target="_blank" rel="noopener">
        {secondWindow.secondWindow}
      </a>
      <Show when={props.dropped}>
        {(why) => (
          <span class="second-dropped" role="alert">
            {why()}
          </span>
        )}
      </Show>
    </>
  );
}
