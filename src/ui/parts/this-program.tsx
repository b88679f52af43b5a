import { For, Show, createSignal, type JSX } from 'solid-js';
import { program } from '../../words/program.ts';
import { lackingIn } from '../lacks.ts';
import type { Versions } from '../versions.ts';
import { Trouble } from './trouble.tsx';

/** Which version this is, whether a newer one is ready, and what it lacks in this browser. */
export function ThisProgram(props: { readonly versions: Versions }): JSX.Element {
  const [answer, setAnswer] = createSignal<'later' | 'taken' | 'a session is open' | null>(null);
  const lacking = lackingIn(globalThis);
  return (
    <section aria-labelledby="program">
      <h2 id="program">{program.thisProgram}</h2>
      <p>
        {program.version(__APP_VERSION__)}{' '}
        <Show when={!props.versions.isWaiting() && lacking.length === 0}>{program.lacksNothing}</Show>
      </p>
      <Show when={props.versions.isWaiting()}>
        <p role="status">{program.newerIsReady}</p>
        <Show when={answer() !== 'later'} fallback={<p>{program.takenWhenClosed}</p>}>
          <p>
            <button type="button" onClick={() => void props.versions.take().then(setAnswer)}>
              {program.takeNow}
            </button>{' '}
            <button type="button" onClick={() => setAnswer('later')}>
              {program.later}
            </button>
          </p>
        </Show>
        <Trouble text={answer() === 'a session is open' && program.sessionIsOpen} />
      </Show>
      <Lacks lacking={lacking} />
    </section>
  );
}

/** By name, so that somebody can look for a browser that has it. */
export function Lacks(props: { readonly lacking: ReturnType<typeof lackingIn> }): JSX.Element {
  return (
    <Show when={props.lacking.length > 0}>
      <p>{program.browserLacks}</p>
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
