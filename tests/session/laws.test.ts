/** What holds whatever is said, in whatever order, over the demonstration and over small procedures made at random. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { planOf } from '../../src/session/calls.ts';
import { decide } from '../../src/session/decide.ts';
import { prompt } from '../../src/language/prompt.ts';
import type { EventBody } from '../../src/session/event.ts';
import { begin, fold } from '../../src/session/fold.ts';
import { isSettled, pendingReading, wantsOwnWord, type Reading, type SessionState } from '../../src/session/state.ts';
import { agree, awaitsWitness, wantsWitness } from '../../src/session/witness.ts';
import { workView } from '../../src/ui/view.ts';
import { goOpenly, job, meaning, mostAnswers } from './anything.ts';
import { affirm, nowOf, people, tell, type Play } from './play.ts';

const bodies = ({ events }: Play): readonly EventBody[] => events.map(({ body }) => body);
/** The state before the first event and after each. */
const statesOf = ({ state, events }: Play): readonly SessionState[] =>
  events.reduce<SessionState[]>(
    (states, event) => [...states, fold(states.at(-1) ?? state, event)],
    [begin(state.procedure, people)],
  );
const withoutStatus = ({ status: _status, witnessed: _witnessed, ...rest }: Reading) => rest;
const NEXT_STATUS: Readonly<Record<Reading['status'], readonly Reading['status'][]>> = {
  captured: ['captured', 'confirmed', 'rejected', 'disregarded', 'replaced', 'disputed', 'set aside'],
  confirmed: ['confirmed', 'disregarded', 'replaced', 'set aside'],
  rejected: ['rejected'],
  disregarded: ['disregarded'],
  replaced: ['replaced'],
  disputed: ['disputed'],
  'set aside': ['set aside'],
};

describe('whatever is said', () => {
  test('no reading is confirmed that was not captured before it, and none twice', () => {
    fc.assert(
      fc.property(job, (play) => {
        const all = bodies(play);
        const confirmed = all.flatMap((body, seq) => (body.kind === 'reading confirmed' ? [{ of: body.of, seq }] : []));
        for (const { of, seq } of confirmed) {
          expect(of).toBeLessThan(seq);
          expect(all[of]?.kind).toBe('reading captured');
        }
        expect(new Set(confirmed.map(({ of }) => of)).size).toBe(confirmed.length);
      }),
    );
  });

  test('no reading is bent: a value is captured in the very figures in which it was said, doubted or not', () => {
    fc.assert(
      fc.property(job, meaning, (play, meaning) => {
        const decision = decide(play.state, { meaning, at: nowOf(play) });
        if (decision.kind === 'refused') return;
        for (const body of decision.events) {
          if (body.kind !== 'reading captured' || body.evidence === 'click') continue;
          if (meaning.kind !== 'reading' && meaning.kind !== 'correction') throw new Error(`From "${meaning.kind}".`);
          expect(body.reading.value).toBe(meaning.reading.value);
          expect(body.doubts).toEqual(meaning.doubts);
        }
      }),
    );
  });

  test('a reading in doubt or outside its window is confirmed by affirm alone', () => {
    fc.assert(
      fc.property(job, meaning, (play, meaning) => {
        const pending = pendingReading(play.state);
        if (!pending || !wantsOwnWord(pending) || meaning.kind === 'affirm') return;
        const after = bodies(tell(play, meaning)).slice(play.events.length);
        expect(after.map(({ kind }) => kind)).not.toContain('reading confirmed');
      }),
    );
  });

  test('what no scale shows is never confirmed, whoever affirms it how often', () => {
    fc.assert(
      fc.property(job, fc.array(meaning, { maxLength: 4 }), (play, more) => {
        for (const { status, doubts = [] } of tell(play, ...more, affirm, affirm).state.readings)
          if (doubts[0] === 'off the scale') expect(status).not.toBe('confirmed');
      }),
    );
  });

  test('none stands against its witness: both values are within one mark, and the second person read before it was confirmed', () => {
    fc.assert(
      fc.property(job, ({ state }) => {
        for (const reading of state.readings) {
          if (reading.status !== 'confirmed' || !wantsWitness(state, reading.step)) continue;
          if (!reading.witnessed) throw new Error(`Reading ${reading.seq} has no witness.`);
          expect(reading.witnessed.person).not.toBe(reading.person);
          expect(agree(state, reading, reading.witnessed.reading)).toBe(true);
        }
      }),
    );
  });

  test('nobody who was the mechanic witnesses anything', () => {
    fc.assert(
      fc.property(job, ({ state, events }) => {
        const plain = state.doers.map((name) => name.trim().toLowerCase());
        let doers = [people.mechanic];
        for (const { body } of events) {
          if (body.kind === 'handed over') doers = [...doers, body.to];
          if (body.kind === 'witnessed' || body.kind === 'step witnessed') expect(doers).not.toContain(body.person);
          if (body.kind === 'second person joined') expect(doers).not.toContain(body.name);
        }
        expect(plain).toEqual(doers.map((name) => name.trim().toLowerCase()));
      }),
    );
  });

  test('a fastener is passed over only with a deviation whose reason was confirmed', () => {
    fc.assert(
      fc.property(job, (play) => {
        const all = bodies(play);
        for (const [seq, body] of all.entries()) {
          if (body.kind !== 'left open') continue;
          const before = all.slice(body.of, seq);
          expect(before[0]?.kind).toBe('deviation reported');
          expect(before.some((each) => each.kind === 'reason confirmed' && each.of === body.of)).toBe(true);
        }
      }),
    );
  });

  test('no value is confirmed, shown or spoken before its witness has read', () => {
    fc.assert(
      fc.property(job, meaning, (play, meaning) => {
        const pending = pendingReading(play.state);
        if (!pending || !awaitsWitness(play.state, pending)) return;
        expect(workView(play.state)).toMatchObject({ pending: null, doubt: null, awaitsWitness: pending.fastener });
        const { phase, breakOf } = play.state;
        // Else nothing of it is spoken: it stands by, or asks first whether everything is as it was left.
        if (phase === 'working' && breakOf === null)
          expect(prompt(play.state).join(' ')).toMatch(
            / is read\. (Second person, say|A second person must join, then say) witness and the value\.$/,
          );
        const after = bodies(tell(play, meaning)).slice(play.events.length);
        expect(after.map(({ kind }) => kind)).not.toContain('reading confirmed');
      }),
    );
  });

  test('silence confirms nothing and changes no reading', () => {
    fc.assert(
      fc.property(job, fc.integer({ min: 1, max: 5 }), (play, times) => {
        const silent = tell(play, ...Array.from({ length: times }, () => ({ kind: 'silence' }) as const));
        expect(silent.state.readings).toEqual(play.state.readings);
        expect({ ...silent.state, silences: 0 }).toEqual({ ...play.state, silences: 0 });
      }),
    );
  });

  test('a correction points at an earlier reading of the same fastener in the same pass', () => {
    fc.assert(
      fc.property(job, (play) => {
        for (const [seq, body] of bodies(play).entries()) {
          if (body.kind !== 'reading captured' || body.corrects === null) continue;
          expect(body.corrects).toBeLessThan(seq);
          const { step, pass, fastener } = body;
          expect(bodies(play)[body.corrects]).toMatchObject({ kind: 'reading captured', step, pass, fastener });
        }
      }),
    );
  });

  test('nothing is erased: readings are only added, and only their standing changes, one way', () => {
    fc.assert(
      fc.property(job, (play) => {
        const states = statesOf(play);
        for (const [i, after] of states.entries()) {
          const before = states[i - 1]?.readings ?? [];
          if (after.readings === before) continue;
          for (const [at, old] of before.entries()) {
            const now = after.readings[at];
            if (now === old) continue;
            expect(now && withoutStatus(now)).toEqual(withoutStatus(old));
            expect(NEXT_STATUS[old.status]).toContain(now?.status);
          }
        }
      }),
    );
  });

  test('at most one reading waits for its confirmation, and one inside its window stands for each call', () => {
    fc.assert(
      fc.property(job, (play) => {
        for (const { readings } of statesOf(play)) {
          expect(readings.filter(({ status }) => status === 'captured').length).toBeLessThanOrEqual(1);
          const standing = readings
            .filter(({ status, verdict }) => status === 'confirmed' && verdict === 'in')
            .map(({ step, pass, fastener }) => `${step}/${pass}/${fastener}`);
          expect(new Set(standing).size).toBe(standing.length);
        }
      }),
    );
  });

  test('the steps before the current one are done and no others, each with every call settled', () => {
    fc.assert(
      fc.property(job, ({ state }) => {
        const { procedure } = state;
        const passed = procedure.steps.slice(0, state.at);
        expect([...state.skippedSteps].every((id) => passed.some((each) => each.id === id))).toBe(true);
        const done = passed.filter(({ id }) => !state.skippedSteps.has(id));
        expect([...state.doneSteps].sort()).toEqual(done.map(({ id }) => id).sort());
        for (const each of done)
          for (const { pass, fastener } of planOf(procedure, each).calls)
            expect(isSettled(state, each.id, pass, fastener)).toBe(true);
      }),
    );
  });

  test('a refusal changes nothing', () => {
    fc.assert(
      fc.property(job, meaning, (play, meaning) => {
        if (decide(play.state, { meaning, at: nowOf(play) }).kind === 'refused')
          expect(tell(play, meaning).state).toEqual(play.state);
      }),
    );
  });

  test('replay stopped early is the session as it was then', () => {
    fc.assert(
      fc.property(job, fc.nat(), (play, count) => {
        const stop = count % (play.events.length + 1);
        const replayed = play.events.slice(0, stop).reduce<SessionState>(fold, begin(play.state.procedure, people));
        expect(replayed).toEqual(statesOf(play)[stop]);
        if (stop === play.events.length) expect(replayed).toEqual(play.state);
      }),
    );
  });

  test('the job can still be finished, by answering openly', () => {
    fc.assert(
      fc.property(job, (play) => {
        expect(goOpenly(play, mostAnswers(play.state.procedure)).state.phase).toBe('closed');
      }),
    );
  });
});
