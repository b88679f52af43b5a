/** A reading read back, and what its verdict asks for. */
import { isReadCall } from '../session/calls.ts';
import { confirmed } from '../session/confirmed.ts';
import {
  callAfter,
  confirmsByGoingOn,
  currentStep,
  openDoubt,
  pendingReading,
  type Reading,
  type SessionState,
} from '../session/state.ts';
import { witnessIn } from '../session/people.ts';
import { stillStanding } from '../session/reading.ts';
import { awaitsWitness, isKept } from '../session/witness.ts';
import { announcing } from '../words/announcing.ts';
import { readBack as words } from '../words/read-back.ts';
import { questionAbout } from './doubt.ts';
import { sayRoundAndCall } from './say-call.ts';
import { count, digits, named, sayTorque, sentence, SPOKEN, type Form } from './say.ts';

type ReadBack = Pick<
  Reading,
  'step' | 'pass' | 'fastener' | 'reading' | 'verdict' | 'evidence' | 'basis' | 'doubts' | 'corrects' | 'witnessed'
>;

/** Digit by digit, then a question without the wanted answer, or the next fastener where going on confirms. */
export function readBack(state: SessionState, reading: ReadBack): string {
  const fastener = named(state, reading);
  if (awaitsWitness(state, reading))
    return sentence((witnessIn(state) === null ? words.witnessMustJoin : words.awaitsWitness)(...fastener));
  const doubt = askAboutDoubt(state, reading);
  if (doubt !== null && isKept(state, reading)) return sentence(words.inDoubt(...fastener, doubt));
  const { basis, evidence, verdict, witnessed } = reading;
  const said = [
    ...fastener,
    basis.of === 'running torque' ? basis.of : evidence,
    digits(reading.reading.value),
  ] as const;
  return [
    sentence(witnessed ? words.witnessed(...said, digits(witnessed.reading.value)) : words.reading(...said)),
    ...(verdict === 'in' ? [] : [outside(basis, verdict)]),
    doubt ?? askOrGoOn(state, reading),
  ].join(' ');
}

function askOrGoOn(state: SessionState, reading: ReadBack): string {
  const step = currentStep(state);
  const next = step && confirmsByGoingOn(state, reading) ? callAfter(state, reading) : null;
  if (!step || !next || !isReadCall(next)) return words.isCorrect;
  if (next.pass.index === reading.pass) return words.next(next.label, count(next.fastener));
  // What comes next is called as it will be when this reading is confirmed: it may be the running torque of that nut.
  const pending = pendingReading(state);
  return words.nextRound(sayRoundAndCall(pending ? confirmed(state, pending.seq) : state, step, next));
}

/** What is asked about a reading in doubt, instead of whether it is correct; null where nothing is, or it was answered. */
export function askAboutDoubt(state: SessionState, reading: ReadBack): string | null {
  const doubt = openDoubt(state, reading);
  return doubt && questionAbout(doubt, isKept(state, reading));
}

/** Where a correction came to nothing: that what it was to stand in for counts as before, and what that asks for. */
export function sayStands(state: SessionState, of: number, form: Form = SPOKEN): readonly string[] {
  const stands = stillStanding(state.readings, of);
  if (stands === null) return [];
  const said = announcing.stands(...named(state, stands, form), form.value(stands.reading));
  return [sentence(said), ...(stands.verdict === 'in' ? [] : [sayVerdict(state, stands)])];
}

const outside = ({ of }: Reading['basis'], verdict: Exclude<Reading['verdict'], 'in'>): string =>
  of === 'running torque' && verdict === 'over' ? words.runsTooHard : words.outside[verdict];

export function sayVerdict(state: SessionState, { verdict, basis, ...reading }: Reading): string {
  const fastener = named(state, reading);
  switch (verdict) {
    case 'in':
      return '';
    case 'over':
      return sentence((basis.of === 'running torque' ? words.tooHard : words.verdict.over)(...fastener));
    case 'nut worn': {
      const minimum = basis.of === 'running torque' ? basis.minimum : null;
      return sentence(words.worn(...fastener, minimum && sayTorque(minimum)));
    }
    case 'under':
    case 'not provable':
      return sentence(words.verdict[verdict](...fastener));
  }
}
