import { For, Show, type JSX } from 'solid-js';
import { tidyName } from '../../session/people.ts';
import { voiceOf, type Voice } from '../../storage/voices.ts';
import { microphone } from '../../words/microphone.ts';
import { FITNESS_SIGN, verdictOf } from '../check-words.ts';
import { showMoment } from '../moment.ts';
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
        <p>{microphone.typeName}</p>
      </Show>
      <For each={named()}>
        {(person) => (
          <p>
            <a
              class="button"
              href={addressOf({ kind: 'check', person, session: null })}
              onClick={() => props.onLeave()}
            >
              {microphone.checkOf(person)}
            </a>{' '}
            <Show when={voiceOf(props.voices, person)}>
              {(voice) => (
                <span>
                  {FITNESS_SIGN[verdictOf(voice()).fitness]} {microphone.fitness[verdictOf(voice()).fitness]},{' '}
                  {showMoment(voice().checkedAt)}
                </span>
              )}
            </Show>
          </p>
        )}
      </For>
    </div>
  );
}
