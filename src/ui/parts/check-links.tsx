import { For, Show, type JSX } from 'solid-js';
import { tidyName } from '../../session/people.ts';
import { voiceOf, type Voice } from '../../storage/voices.ts';
import { FITNESS, verdictOf } from '../check-words.ts';
import { addressOf } from '../router.ts';

/** The way to the microphone check of each person who is named, with what the last one showed. */
export function CheckLinks(props: {
  readonly voices: readonly Voice[];
  readonly mechanic: string;
  readonly second: string;
  readonly onLeave: () => void;
}): JSX.Element {
  const named = (): readonly string[] => [props.mechanic, props.second].map(tidyName).filter(Boolean);
  return (
    <div class="check-links">
      <Show when={named().length === 0}>
        <p>Type a name to check how the microphone hears that person here.</p>
      </Show>
      <For each={named()}>
        {(person) => (
          <p>
            <a
              class="button"
              href={addressOf({ kind: 'check', person, session: null })}
              onClick={() => props.onLeave()}
            >
              Microphone check: {person}
            </a>{' '}
            <Show when={voiceOf(props.voices, person)}>
              {(voice) => (
                <span>
                  {FITNESS[verdictOf(voice()).fitness].sign} {FITNESS[verdictOf(voice()).fitness].words},{' '}
                  {new Date(voice().checkedAt).toLocaleString()}
                </span>
              )}
            </Show>
          </p>
        )}
      </For>
    </div>
  );
}
