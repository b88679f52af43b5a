/** After the last step: decisions by people with a name, an inspection by somebody else, signatures; only then it is closed. */
import { describe, expect, test } from 'vitest';
import { announce } from '../../src/language/announce.ts';
import { prompt } from '../../src/language/prompt.ts';
import { sayRefusal } from '../../src/language/say-refusal.ts';
import { situationOf } from '../../src/language/situation.ts';
import { stillOpen, undecided } from '../../src/session/closing.ts';
import { fold } from '../../src/session/fold.ts';
import { currentCall, currentStep } from '../../src/session/state.ts';
import { DISPOSITION_KINDS, type DispositionKind, type Meaning } from '../../src/session/intent.ts';
import { pointText } from '../../src/ui/view/closing.ts';
import {
  affirm,
  dial,
  eventOf,
  happened,
  indicating,
  kinds,
  newtonMetres,
  next,
  procedureOf,
  reading,
  refused,
  start,
  step,
  tell,
  tighten,
  type Play,
} from './play.ts';

const why = (play: Play): string => {
  const reason = refused(play);
  return reason ? sayRefusal(play.state, reason) : '';
};
const said = (play: Play): readonly string[] => announce(play.state, happened(play));
const dispose = (of: number, by: string, what: DispositionKind = 'repaired', note = ''): Meaning => ({
  kind: 'dispose',
  of,
  what,
  by,
  note,
});
const sign = (role: 'mechanic' | 'inspector', name: string): Meaning => ({ kind: 'sign', role, name });

/** Three studs; the first was read over its window, then right. */
const overOnce = (more: object = {}): Play =>
  tell(
    start(procedureOf([tighten('ring')], more)),
    reading('30'),
    affirm,
    ...['24', '24', '24'].flatMap((value) => [reading(value), affirm]),
  );
const done = (signatures: readonly string[]): Play =>
  tell(start(procedureOf([step('work', 'do')], { signatures })), next);

describe('a deviation', () => {
  const end = overOnce();
  const [point] = undecided(end.state);
  const seq = point?.seq ?? -1;

  test('keeps the record open until somebody has decided about it', () => {
    expect(kinds(end)).toEqual(['reading confirmed', 'step done']);
    expect(end.state.phase).toBe('working');
    expect(prompt(end.state)).toEqual([
      'All steps are done.',
      'One deviation needs a decision.',
      'Stud one, pass one, over torque.',
      'For each, type the name of whoever decides, and tap the decision.',
    ]);
  });
  test.each(DISPOSITION_KINDS.filter((each) => each !== 'worked again'))(
    'is decided about by a person with a name, and the record is closed: %s',
    (what) => {
      const closed = tell(end, dispose(seq, ' Ada  Inspector ', what, ' new nut '));
      expect(happened(closed)).toEqual([
        { kind: 'disposed', of: seq, what, by: 'Ada Inspector', note: 'new nut' },
        { kind: 'closed' },
      ]);
      expect(closed.state.phase).toBe('closed');
    },
  );
  test('is shown as open with its step, until it is decided about, and after it was put off', () => {
    const shown = ({ state }: Play): readonly string[] => stillOpen(state).map((each) => pointText(state, each));
    expect(shown(end)).toEqual(['ring. Stud 1, pass 1: over torque']);
    expect(shown(tell(end, dispose(seq, 'Ada')))).toEqual([]);
    expect(shown(tell(end, dispose(seq, 'Ada', 'deferred')))).toEqual([
      'ring. Stud 1, pass 1: over torque: deferred, by Ada',
    ]);
  });
  test('that was put right in the work is not worked again', () =>
    expect(why(tell(end, dispose(seq, 'Ada', 'worked again')))).toBe(
      'That was put right in the work already. Decide what becomes of it.',
    ));
  test('is not decided about by nobody', () =>
    expect(why(tell(end, dispose(seq, '  ')))).toBe('A name is needed. Type it.'));
  test('is not accepted as it is by who did the work', () => {
    expect(why(tell(end, dispose(seq, 'mechanic', 'accepted as is')))).toBe(
      'Mechanic took part in this work, so somebody else must do that: type another name.',
    );
    expect(kinds(tell(end, dispose(seq, 'Mechanic', 'repaired')))).toContain('disposed');
  });
  test('is not decided about by a word: nothing that may be said means it', () => {
    const spoken = situationOf(end.state).sayings.map(({ meaning }) => meaning.kind);
    expect(spoken).not.toContain('dispose');
    expect(spoken).not.toContain('affirm');
    expect(why(tell(end, affirm))).toContain('One deviation needs a decision.');
  });
  test('that is none cannot be decided about, nor one twice', () => {
    expect(why(tell(end, dispose(999, 'Ada')))).toBe('There is nothing to decide about that now.');
    const signed = tell(overOnce({ signatures: ['mechanic'] }), dispose(seq, 'Ada'));
    expect(refused(tell(signed, dispose(seq, 'Ada')))).toEqual({ code: 'nothing to decide' });
  });
  test('that is deferred is said to be open still', () =>
    expect(said(tell(end, dispose(seq, 'Ada', 'deferred')))).toContain('One deferred: it is still open.'));
  test('keeps the record open over the end of a shift', () => {
    const over = tell(end, { kind: 'hand over' }, { kind: 'take over', name: 'Other mechanic' });
    expect(over.state.people.mechanic).toBe('Other mechanic');
    expect(over.state.phase).toBe('working');
  });
});

describe('an independent inspection', () => {
  const look = step('look', 'witness', { what: 'ten nuts', independent: true });
  const inspection = start(procedureOf([look, step('rest', 'do')]));
  const inspects = (name: string, agrees = true): Meaning => ({ kind: 'inspects', name, agrees });

  test('is made by somebody who gives a name and never was the mechanic', () => {
    expect(happened(tell(inspection, inspects('Ada')))[0]).toEqual({
      kind: 'step witnessed',
      step: 'look',
      person: 'Ada',
      agrees: true,
      independent: true,
    });
    expect(kinds(tell(inspection, inspects('Ada')))).toContain('step done');
  });
  test('is refused to who did the work, in any spelling of the name', () =>
    expect(why(tell(inspection, inspects(' mechanic ')))).toBe(
      'Mechanic took part in this work, so somebody else must do that: type another name.',
    ));
  test('is refused to the second person and to helpers, also once they have left: they had a part in it (common practice)', () => {
    const joined = tell(
      inspection,
      { kind: 'second person', name: 'Third person' },
      { kind: 'second person', name: null },
    );
    for (const name of ['second PERSON', 'Third person'])
      expect(refused(tell(joined, inspects(name)))?.code).toBe('own work');
    const fact = { of: 'helper', name: 'Bo' } as const;
    const helped = { ...inspection, state: fold(inspection.state, eventOf({ kind: 'prepared', fact }, 1)) };
    expect(refused(tell(helped, inspects('Bo')))).toEqual({ code: 'own work', name: 'Bo' });
    expect(kinds(tell(helped, inspects('Ada')))).toContain('step done');
  });
  test('is refused to who did some of it and went', () => {
    const handed = tell(inspection, { kind: 'hand over' }, { kind: 'take over', name: 'Other mechanic' });
    expect(refused(tell(handed, inspects('Mechanic')))).toEqual({ code: 'own work', name: 'Mechanic' });
    expect(refused(tell(handed, inspects('Other mechanic')))?.code).toBe('own work');
  });
  test('is not made by a spoken word, nor passed by "next"', () => {
    const words =
      'An inspector looks first: somebody who took no part in the work types a name and taps what was found.';
    expect(why(tell(inspection, { kind: 'witness says', agrees: true }))).toBe(words);
    expect(why(tell(inspection, next))).toBe(words);
    expect(situationOf(inspection.state).sayings.map(({ meaning }) => meaning.kind)).not.toContain('witness says');
  });
  test('wants a name', () => expect(refused(tell(inspection, inspects(' ')))).toEqual({ code: 'no name' }));
  test('that does not pass stops the step', () => {
    const failed = tell(inspection, inspects('Ada', false));
    expect(kinds(failed)).toEqual(['step witnessed']);
    expect(said(failed)[0]).toBe('Stop. Ada does not pass it. Put it right, then it is inspected again.');
  });
  test('is nothing elsewhere', () =>
    expect(why(tell(start(procedureOf([step('work', 'do')])), inspects('Ada')))).toBe('There is nothing to witness.'));
});

describe('a signature', () => {
  test('is wanted of nobody where the procedure names none', () => expect(done([]).state.phase).toBe('closed'));
  test('keeps the record open until it is given; the last one closes it', () => {
    const both = done(['mechanic', 'inspector']);
    expect(both.state.phase).toBe('working');
    const one = tell(both, sign('mechanic', 'mechanic'));
    expect(happened(one)).toEqual([{ kind: 'signed', role: 'mechanic', person: 'Mechanic' }]);
    const two = tell(one, sign('inspector', 'Ada'));
    expect(kinds(two)).toEqual(['signed', 'closed']);
    expect(said(two)[0]).toBe('Signed: Ada.');
    // It is taken, and warned of: the procedure asks here for a signature, and for no independent check.
    expect(said(tell(one, sign('inspector', 'Second person')))[1]).toBe(
      'Mind: Second person took part in this work, and signs as inspector. Common practice is somebody who did not.',
    );
  });
  test('of the mechanic is no other person’s', () =>
    expect(why(tell(done(['mechanic']), sign('mechanic', 'Ada')))).toBe(
      'Ada is not the mechanic. Mechanic signs here.',
    ));
  test('of the inspector is not that of who did the work', () =>
    expect(why(tell(done(['inspector']), sign('inspector', 'Mechanic')))).toBe(
      'Mechanic took part in this work, so somebody else must do that: type another name.',
    ));
  test('wants a name', () =>
    expect(refused(tell(done(['mechanic']), sign('mechanic', '')))).toEqual({ code: 'no name' }));
  test('comes after the decisions, and in its order', () => {
    const early = tell(overOnce({ signatures: ['mechanic'] }), sign('mechanic', 'Mechanic'));
    expect(refused(early)).toEqual({ code: 'closing' });
    expect(refused(tell(done(['mechanic', 'inspector']), sign('inspector', 'Ada')))).toEqual({
      code: 'nothing to sign',
    });
  });
  test('is nothing during the work', () => {
    const working = start(procedureOf([step('work', 'do')], { signatures: ['mechanic'] }));
    expect(why(tell(working, sign('mechanic', 'Mechanic')))).toBe('There is nothing to sign now.');
  });
  test('is never a spoken word: an answer does not close the record', () => {
    const open = done(['mechanic']);
    for (const meaning of [affirm, next, { kind: 'answer', outcome: 'affirm' } as const])
      expect(why(tell(open, meaning))).toBe(
        'All steps are done. Mechanic signs: type the name, then hold the button for two seconds.',
      );
    expect(situationOf(open.state).sayings.map(({ meaning }) => meaning.kind)).not.toContain('sign');
  });
});

describe('what was left open', () => {
  const leaveOpen: Meaning = { kind: 'leave open' };
  const damaged: readonly Meaning[] = [
    { kind: 'report', what: 'damage' },
    { kind: 'reason', text: 'thread is torn' },
    affirm,
    leaveOpen,
  ];
  const read = ['24', '24'].flatMap((value) => [reading(value), affirm]);
  const again = (play: Play): Meaning => dispose(undecided(play.state)[0]?.seq ?? -1, 'Ada', 'worked again');
  const left = (...after: readonly object[]): Play =>
    tell(
      start(
        procedureOf([tighten('ring'), ...after], { openings: [{ id: 'inlet', name: 'oil inlet', closure: 'plug' }] }),
      ),
      ...damaged,
      ...read,
    );
  const measure = step('level', 'measure', { what: 'level', unit: 'mm', window: { min: '40', max: '60' } });
  const end = tell(left(step('look', 'do')), next);

  test('may be worked again, by a decision with a name: the work goes back to its step, and all after it is done anew', () => {
    const back = tell(end, again(end));
    expect(kinds(back)).toEqual(['disposed', 'step taken back']);
    expect(back.state.phase).toBe('working');
    expect(currentCall(back.state)?.fastener).toBe(1);
    expect(said(back)[0]).toBe('Logged: worked again, by Ada.');
    // The others stand as they were read.
    expect(back.state.readings.map(({ status }) => status)).toEqual(['confirmed', 'confirmed']);
    const closed = tell(back, reading('24'), affirm, next);
    expect(kinds(closed)).toEqual(['step done', 'closed']);
  });
  test('and left open once more is decided about once more', () => {
    const once = tell(end, again(end), leaveOpen, next);
    expect(once.state.phase).toBe('working');
    expect(undecided(once.state).length).toBe(1);
    expect(tell(once, dispose(undecided(once.state)[0]?.seq ?? -1, 'Ada', 'deferred')).state.phase).toBe('closed');
  });
  test('at one step, with damage of the same part at an earlier one, is a point of its own, and leads back to its step', () => {
    const free = step('free', 'loosen', { pattern: 'three' });
    const freed = tell(
      start(procedureOf([free, tighten('ring')])),
      ...damaged.slice(0, 3),
      ...Array<Meaning>(6).fill(next),
    );
    const fastener = freed.state.deviations[0]?.fastener ?? -1;
    const played = [1, 3, 2].flatMap((each) => (each === fastener ? damaged : [reading('24'), affirm]));
    const both = tell(freed, ...played);
    expect(undecided(both.state).map((point) => pointText(both.state, point))).toEqual([
      `free. Stud ${fastener}, pass 1: damage`,
      `ring. Stud ${fastener}, pass 1: damage, left open`,
    ]);
    const one = tell(both, dispose(undecided(both.state)[0]?.seq ?? -1, 'Ada'));
    const back = tell(one, again(one));
    expect(happened(back)).toContainEqual({ kind: 'step taken back', step: 'ring' });
    expect(currentCall(back.state)?.fastener).toBe(fastener);
  });
  test('before it was tightened is worked again, though its damage was reported first when its running torque was measured', () => {
    const ring = tighten('ring', { runDown: { used: true, minimum: newtonMetres('2'), tool: 'dial' } });
    const play = start(procedureOf([ring], { tools: [indicating, dial] }));
    const values = (...all: readonly string[]) => all.flatMap((value) => [reading(value), affirm]);
    const ran = tell(play, ...damaged.slice(0, 3), ...values('2.5', '2.5', '2.5'));
    const tightened = tell(ran, ...damaged, ...values('27', '27'));
    expect(undecided(tightened.state)).toMatchObject([{ pass: 1, leftOpen: true }]);
    expect(kinds(tell(tightened, again(tightened)))).toEqual(['disposed', 'step taken back']);
  });
  test('is read again where it is a value', () => {
    const value = tell(
      start(procedureOf([measure])),
      { kind: 'observed', value: '70' },
      affirm,
      leaveOpen,
      { kind: 'reason', text: 'glass is dirty' },
      affirm,
    );
    const back = tell(value, again(value));
    expect(currentStep(back.state)?.id).toBe('level');
    expect(tell(back, { kind: 'observed', value: '50' }, affirm).state.phase).toBe('closed');
  });
  test.each<[string, Play]>([
    ['opened', tell(left(step('open', 'do', { opens: ['inlet'] })), affirm, next, affirm, affirm, next)],
    ['carried', tell(left(step('carry', 'hold')), { kind: 'held' }, { kind: 'set down' })],
    ['taken off', tell(left(step('free', 'loosen', { pattern: 'three' })), next, next, next, next, next, next)],
  ])('is not, once the unit was %s after it', (_, play) => {
    expect(undecided(play.state).length).toBe(1);
    const refusal = tell(play, again(play));
    expect(refused(refusal)).toEqual({ code: 'not worked again', because: 'moved since' });
    expect(why(refusal)).toContain('going back does not put it right');
    expect(refusal.state).toEqual(play.state);
  });
});
