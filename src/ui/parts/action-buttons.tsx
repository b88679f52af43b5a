import { For, Index, Show, type JSX } from 'solid-js';
import type { Situation } from '../../language/situation.ts';
import type { Meaning } from '../../session/intent.ts';
import { buttons } from '../../words/buttons.ts';

interface Action {
  readonly label: keyof typeof buttons;
  readonly meaning: Meaning;
}

/** Fixed places: a button never moves, and never becomes another, under a finger. It is dim where it means nothing. */
const FIXED: readonly Action[] = [
  { label: 'affirm', meaning: { kind: 'affirm' } },
  { label: 'negative', meaning: { kind: 'negative' } },
  { label: 'next', meaning: { kind: 'next' } },
  { label: 'back', meaning: { kind: 'back' } },
  { label: 'sayAgain', meaning: { kind: 'say again' } },
  { label: 'disregard', meaning: { kind: 'disregard' } },
  { label: 'turned', meaning: { kind: 'turned' } },
  { label: 'standBy', meaning: { kind: 'stand by' } },
  { label: 'continue', meaning: { kind: 'continue' } },
];

/** Seldom wanted, and apart from the others: what is out of the ordinary, and the end of a shift. */
const SELDOM: readonly Action[] = [
  { label: 'reportDamage', meaning: { kind: 'report', what: 'damage' } },
  { label: 'reportOverTorque', meaning: { kind: 'report', what: 'over torque' } },
  { label: 'reportUnderTorque', meaning: { kind: 'report', what: 'under torque' } },
  { label: 'reportNoTorque', meaning: { kind: 'report', what: 'takes no torque' } },
  { label: 'leaveOpen', meaning: { kind: 'leave open' } },
  { label: 'handOver', meaning: { kind: 'hand over' } },
];

/** What is asked for at this step only, each in its own place apart from the others. */
const ANSWERS: readonly Meaning['kind'][] = ['answer', 'witness says', 'held', 'set down', 'help'];
const HAS_ONE: ReadonlySet<Meaning['kind']> = new Set(['held', 'set down', 'help']);

const isSame = (one: Meaning, other: Meaning): boolean => JSON.stringify(one) === JSON.stringify(other);

interface ButtonsProps {
  readonly situation: Situation;
  readonly onMeaning: (meaning: Meaning) => void;
}

/** What is asked for at this moment only. It takes its room from what is shown, so that no other button moves for it. */
export function AnswerButtons(props: ButtonsProps): JSX.Element {
  const answers = () =>
    ANSWERS.flatMap((kind) => {
      const sayings = props.situation.sayings.filter(({ meaning }) => meaning.kind === kind);
      // Another wording of the same is no other button.
      return HAS_ONE.has(kind) ? sayings.slice(0, 1) : sayings;
    });
  return (
    <Show when={answers().length > 0}>
      <div class="answers">
        <Index each={answers()}>
          {(answer) => (
            <button
              type="button"
              classList={{ help: answer().meaning.kind === 'help' }}
              onClick={() => props.onMeaning(answer().meaning)}
            >
              {answer().words}
            </button>
          )}
        </Index>
      </div>
    </Show>
  );
}

/** Everything that can be said without a value, to be tapped. */
export function ActionButtons(
  props: ButtonsProps & {
    /** What is most likely wanted now; none where a value or a choice is. */
    readonly primary: Meaning['kind'] | null;
  },
): JSX.Element {
  return (
    <div class="actions">
      <Row {...props} actions={FIXED} />
    </div>
  );
}

/** What is seldom said, below what the mechanic looks at. */
export function SeldomButtons(props: ButtonsProps): JSX.Element {
  return (
    <div class="actions">
      <Row {...props} actions={SELDOM} seldom />
    </div>
  );
}

function Row(
  props: ButtonsProps & {
    readonly actions: readonly Action[];
    readonly primary?: Meaning['kind'] | null;
    readonly seldom?: true;
  },
): JSX.Element {
  const isMeant = (meaning: Meaning): boolean =>
    props.situation.sayings.some((saying) => isSame(saying.meaning, meaning));
  return (
    <div class="fixed" classList={{ seldom: props.seldom }}>
      <For each={props.actions}>
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
            {buttons[label]}
          </button>
        )}
      </For>
    </div>
  );
}
