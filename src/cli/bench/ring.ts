/** A job for measuring: one ring of any number of studs in six passes, worked through as it is called. */
import { readProcedure, type ProcedureFile } from '../../procedure/procedure.ts';
import { decide } from '../../session/decide.ts';
import type { SessionEvent } from '../../session/event.ts';
import { begin, fold } from '../../session/fold.ts';
import { currentCall, type SessionState } from '../../session/state.ts';

export const PASSES = 6;
/** In N·m, one for each pass. */
export const targets = Array.from({ length: PASSES }, (_, i) => 20 + 4 * i);

/** A procedure of one ring, for measuring alone. */
export function ring(count: number): ProcedureFile {
  const inNm = (value: number) => ({ value: String(value), unit: 'N·m' }) as const;
  return {
    format: 'bothhands-procedure',
    version: 1,
    id: 'ring',
    title: 'Ring',
    invented: true,
    source: { document: 'Invented', revision: 'A' },
    component: { name: 'Ring', dryMass: { value: '10', unit: 'kg' } },
    tools: [
      {
        id: 'wrench',
        name: 'Wrench',
        type: 'indicating',
        range: { min: inNm(5), max: inNm(60) },
        resolution: inNm(0.5),
        calibrationDue: '2031-03-31',
      },
    ],
    patterns: [
      {
        id: 'ring',
        name: 'Ring',
        fastener: 'stud',
        layout: { shape: 'ring', count },
        order: { kind: 'crosswise' },
      },
    ],
    steps: [
      {
        id: 'tighten',
        kind: 'tighten',
        title: 'Tighten',
        text: 'Tighten.',
        pattern: 'ring',
        tool: 'wrench',
        passes: targets.map((value) => ({
          kind: 'torque',
          target: inNm(value),
          window: { min: inNm(value - 2), max: inNm(value + 2) },
        })),
      },
    ],
  };
}

/** A session of one ring, every reading as called and confirmed, made by the session itself. */
export function workedThrough(count: number): {
  readonly begun: SessionState;
  readonly events: readonly SessionEvent[];
} {
  const loaded = readProcedure(ring(count));
  if (loaded.kind === 'faulty') throw new Error(loaded.faults.map(({ message }) => message).join('; '));
  const begun = begin(loaded.procedure, { mechanic: 'A', second: null });
  const events: SessionEvent[] = [];
  let state = begun;
  for (let call = currentCall(state); call !== null && call.pass.target !== null; call = currentCall(state)) {
    const value = String(call.pass.target.value);
    for (const meaning of [
      { kind: 'reading', reading: { fastener: call.fastener, value } },
      { kind: 'affirm' },
    ] as const) {
      const at = { utc: '2026-03-01T00:00:00.000Z', monotonic: 0 };
      const decision = decide(state, { meaning, at });
      if (decision.kind === 'refused') throw new Error(`The measured job was refused: ${decision.reason.code}.`);
      for (const body of decision.events) {
        const event = { seq: events.length, at, source: 'touch', person: 'A', heard: null, body } as const;
        events.push(event);
        state = fold(state, event);
      }
    }
  }
  return { begun, events };
}
