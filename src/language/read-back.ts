/** A reading read back, and what its verdict asks for. */
import { isReadCall } from '../session/calls.ts';
import { confirmed } from '../session/confirmed.ts';
import {
  callAfter,
  confirmsByGoingOn,
  currentStep,
  pendingReading,
  type Reading,
  type SessionState,
} from '../session/state.ts';
import { witnessIn } from '../session/people.ts';
import { awaitsWitness } from '../session/witness.ts';
import { questionAbout } from './doubt.ts';
import { sayRoundAndCall } from './say-call.ts';
import { count, digits, labelOf, sayTorque, sentence } from './say.ts';

type ReadBack = Pick<
  Reading,
  'step' | 'pass' | 'fastener' | 'reading' | 'verdict' | 'evidence' | 'basis' | 'doubts' | 'corrects' | 'witnessed'
>;

/** Digit by digit, then a question without the wanted answer, or the next fastener where going on confirms. */
export function readBack(state: SessionState, reading: ReadBack): string {
  const named = `${labelOf(state, reading.step)} ${count(reading.fastener)}`;
  if (awaitsWitness(state, reading)) {
    const whom = witnessIn(state) === null ? 'A second person must join, then say' : 'Second person, say';
    return `${sentence(named)} is read. ${whom} witness and the value.`;
  }
  const { witnessed } = reading;
  const how =
    reading.basis.of === 'running torque' ? 'running torque ' : reading.evidence === 'click' ? 'click at ' : '';
  const value = `${named}, ${how}${digits(reading.reading.value)}${witnessed ? `, witness, ${digits(witnessed.reading.value)}` : ''}.`;
  const verdict = reading.verdict === 'in' ? '' : ` That is ${outside(reading.basis, reading.verdict)}.`;
  return sentence(`${value}${verdict} ${askOrGoOn(state, reading)}`);
}

function askOrGoOn(state: SessionState, reading: ReadBack): string {
  const [doubt] = reading.doubts ?? [];
  if (doubt !== undefined && !isSaidAgain(state, reading)) return questionAbout(doubt);
  const step = currentStep(state);
  const next = step && confirmsByGoingOn(state, reading) ? callAfter(state, reading) : null;
  if (!step || !next || !isReadCall(next)) return 'Is that correct?';
  if (next.pass.index === reading.pass) return `Next, ${next.label} ${count(next.fastener)}.`;
  // What comes next is called as it will be when this reading is confirmed: it may be the running torque of that nut.
  const pending = pendingReading(state);
  return `Next: ${sayRoundAndCall(pending ? confirmed(state, pending.seq) : state, step, next)}`;
}

/** Who says the same value again has answered the question: what is left is whether it was heard rightly. */
const isSaidAgain = (state: SessionState, { corrects, reading }: ReadBack): boolean =>
  state.readings.some((old) => old.seq === corrects && old.reading.value === reading.value);

const outside = ({ of }: Reading['basis'], verdict: Exclude<Reading['verdict'], 'in'>): string =>
  of === 'running torque' && verdict === 'over' ? 'too much for the tools of this step' : OUTSIDE[verdict];

const OUTSIDE: Readonly<Record<Exclude<Reading['verdict'], 'in'>, string>> = {
  under: 'under the window',
  over: 'over the window',
  'not provable': 'too near the limit to prove',
  'nut worn': 'below the minimum',
};

export function sayVerdict(state: SessionState, reading: Reading): string {
  const fastener = sentence(`${labelOf(state, reading.step)} ${count(reading.fastener)}`);
  switch (reading.verdict) {
    case 'in':
      return '';
    case 'under':
      return `${fastener} is under. Tighten on and read again.`;
    case 'over':
      if (reading.basis.of === 'running torque')
        return `${fastener} runs too hard for the tools of this step. Measure it again or decide by the manual.`;
      return `${fastener} is over. Stop. Back it out and decide by the manual.`;
    case 'nut worn': {
      const minimum = reading.basis.of === 'running torque' ? reading.basis.minimum : null;
      return `${fastener} is worn: it runs below the minimum${minimum ? ` of ${sayTorque(minimum)}` : ''}. Reject it, fit another, and measure again.`;
    }
    case 'not provable':
      return `${fastener} cannot be proved. Read it again or decide by the manual.`;
  }
}
