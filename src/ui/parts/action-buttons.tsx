import { For, Index, type JSX } from 'solid-js';
import type { Situation } from '../../language/situation.ts';
import type { Meaning } from '../../session/intent.ts';

/** Fixed places: a button never moves, and never becomes another, under a finger. It is dim where it means nothing. */
const FIXED: readonly { readonly label: string; readonly meaning: Meaning }[] = [
  { label: 'Affirm', meaning: { kind: 'affirm' } },
  { label: 'Negative', meaning: { kind: 'negative' } },
  { label: 'Next', meaning: { kind: 'next' } },
  { label: 'Back', meaning: { kind: 'back' } },
  { label: 'Say again', meaning: { kind: 'say again' } },
  { label: 'Disregard', meaning: { kind: 'disregard' } },
  { label: 'Turned', meaning: { kind: 'turned' } },
  { label: 'Stand by', meaning: { kind: 'stand by' } },
  { label: 'Continue', meaning: { kind: 'continue' } },
];

/** Everything that can be said without a value, to be tapped. */
export function ActionButtons(props: {
  readonly situation: Situation;
  /** What is most likely wanted now; none where a value or a choice is. */
  readonly primary: Meaning['kind'] | null;
  readonly onMeaning: (meaning: Meaning) => void;
}): JSX.Element {
  const isMeant = (meaning: Meaning): boolean =>
    props.situation.sayings.some((saying) => saying.meaning.kind === meaning.kind);
  const answers = () => props.situation.sayings.filter(({ meaning }) => meaning.kind === 'answer');
  return (
    <div class="actions">
      <div class="answers">
        <Index each={answers()}>
          {(answer) => (
            <button type="button" onClick={() => props.onMeaning(answer().meaning)}>
              {answer().words}
            </button>
          )}
        </Index>
      </div>
      <div class="fixed">
        <For each={FIXED}>
          {({ label, meaning }) => (
            <button
              type="button"
              classList={{ primary: props.primary === meaning.kind && isMeant(meaning) }}
              // Not `disabled`: that would throw the focus off the button that was just pressed.
              aria-disabled={!isMeant(meaning)}
              onClick={() => {
                if (isMeant(meaning)) props.onMeaning(meaning);
              }}
            >
              {label}
            </button>
          )}
        </For>
      </div>
    </div>
  );
}
