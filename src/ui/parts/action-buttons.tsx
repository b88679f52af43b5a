import { For, Index, Show, type JSX } from 'solid-js';
import type { Situation } from '../../language/situation.ts';
import type { Meaning } from '../../session/intent.ts';
import { buttons } from '../../words/buttons.ts';
import type { Primary } from '../view/primary.ts';

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

/** Questions about the work, by the words that ask them aloud. */
const ASK: readonly Action[] = [
  { label: 'whereAreWe', meaning: { kind: 'question', question: { about: 'place' } } },
  { label: 'remaining', meaning: { kind: 'question', question: { about: 'left' } } },
  { label: 'lastValues', meaning: { kind: 'question', question: { about: 'last readings' } } },
  { label: 'explain', meaning: { kind: 'question', question: { about: 'why' } } },
  { label: 'saySlowly', meaning: { kind: 'question', question: { about: 'slowly' } } },
];

/** What is asked for at this moment only, each in its own place apart from the others. */
const ANSWERS: readonly Meaning['kind'][] = ['answer', 'witness says', 'held', 'set down', 'help', 'continue'];
const HAS_ONE: ReadonlySet<Meaning['kind']> = new Set(['held', 'set down', 'help', 'continue']);

const isSame = (one: Meaning, other: Meaning): boolean => JSON.stringify(one) === JSON.stringify(other);

interface RowProps {
  readonly situation: Situation;
  readonly onMeaning: (meaning: Meaning) => void;
  /** What would be refused looks so; who presses it all the same is told why. */
  readonly isRefused: (meaning: Meaning) => boolean;
}

interface PrimaryProps extends RowProps {
  /** What is most likely wanted now; none where a value or a choice is. */
  readonly primary: Primary | null;
}

const nameOf = (meaning: Meaning): string => (meaning.kind === 'answer' ? meaning.outcome : meaning.kind);

/** What is asked for at this moment only. It takes its room from what is shown, so that no other button moves for it. */
export function AnswerButtons(props: PrimaryProps): JSX.Element {
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
              classList={{
                help: answer().meaning.kind === 'help',
                primary: props.primary === nameOf(answer().meaning) && !props.isRefused(answer().meaning),
              }}
              aria-disabled={props.isRefused(answer().meaning)}
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
export function ActionButtons(props: PrimaryProps): JSX.Element {
  return (
    <div class="actions">
      <Row {...props} actions={FIXED} />
    </div>
  );
}

/** What is seldom said, below what the mechanic looks at. */
export function SeldomButtons(props: RowProps): JSX.Element {
  return (
    <div class="actions">
      <Row {...props} actions={SELDOM} seldom />
    </div>
  );
}

/** What can be asked about the work, for who works muted or by keys. */
export function AskButtons(props: RowProps): JSX.Element {
  return (
    <div class="actions" role="group" aria-labelledby="ask">
      <h2 id="ask">{buttons.ask}</h2>
      <Row {...props} actions={ASK} seldom />
    </div>
  );
}

function Row(
  props: RowProps & {
    readonly actions: readonly Action[];
    readonly primary?: Primary | null;
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
            classList={{ primary: props.primary === meaning.kind && isMeant(meaning) && !props.isRefused(meaning) }}
            // Not `disabled`: that would throw the focus off the button that was just pressed.
            aria-disabled={!isMeant(meaning) || props.isRefused(meaning)}
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
