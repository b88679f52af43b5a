import { For, Show, createSignal, type JSX } from 'solid-js';
import { lackingIn } from '../lacks.ts';
import type { Versions } from '../versions.ts';

/** Which version this is, whether a newer one is ready, and what it lacks in this browser. */
export function ThisProgram(props: { readonly versions: Versions }): JSX.Element {
  const [answer, setAnswer] = createSignal<'later' | 'taken' | 'a session is open' | null>(null);
  const lacking = lackingIn(globalThis);
  return (
    <section aria-labelledby="program">
      <h2 id="program">This program</h2>
      <p>
        Version {__APP_VERSION__}.{' '}
        <Show when={!props.versions.isWaiting() && lacking.length === 0}>
          This browser has every part that it needs.
        </Show>
      </p>
      <Show when={props.versions.isWaiting()}>
        <p role="status">A newer version is ready. It is taken between sessions only.</p>
        <Show when={answer() !== 'later'} fallback={<p>It is taken when all windows of Bothhands were closed.</p>}>
          <p>
            <button type="button" onClick={() => void props.versions.take().then(setAnswer)}>
              Take it now
            </button>{' '}
            <button type="button" onClick={() => setAnswer('later')}>
              Later
            </button>
          </p>
        </Show>
        <Show when={answer() === 'a session is open'}>
          <p class="trouble" role="alert">
            Not now: a session is open in another window. Leave it there first.
          </p>
        </Show>
      </Show>
      <Lacks lacking={lacking} />
    </section>
  );
}

/** By name, so that somebody can look for a browser that has it. */
export function Lacks(props: { readonly lacking: ReturnType<typeof lackingIn> }): JSX.Element {
  return (
    <Show when={props.lacking.length > 0}>
      <p>This browser lacks:</p>
      <ul>
        <For each={props.lacking}>
          {(part) => (
            <li>
              <b>{part.name}.</b> {part.without}
            </li>
          )}
        </For>
      </ul>
    </Show>
  );
}
