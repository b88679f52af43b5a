/**
 * A small fleet, and what was said in it: so that a test can work the figures out from what was said, without the record.
 * Twelve sessions on a ring in N·m, five days apart, whose readings creep up; three on a cover with a wrench in lbf·in.
 */
import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import type { Entry } from '../../../src/record/entry.ts';
import { smallProcedure } from '../../support/small-procedure.ts';
import { madeSession, says, sealedFile, value, type Said } from './made-sessions.ts';

export interface Call {
  readonly session: string;
  readonly day: number;
  readonly procedure: 'small-cover' | 'inch-cover';
  readonly pass: number;
  readonly fastener: number;
  /** What was said, in the unit of the tool, and whether its read-back was affirmed. */
  readonly said: readonly { readonly value: number; readonly affirmed: boolean }[];
  /** Words beyond the usual: unclear ones, silences. */
  readonly questions: number;
}

const inch = (text: string) => ({ value: text, unit: 'lbf·in' }) as const;
const foot = (text: string) => ({ value: text, unit: 'lbf·ft' }) as const;
/** The values of the manual are in lbf·ft, the wrench shows lbf·in: 10 lbf·ft are 120 lbf·in. */
const inchProcedure = {
  ...smallProcedure,
  id: 'inch-cover',
  title: 'Inch cover',
  tools: [
    {
      id: 'inch-wrench',
      name: 'Indicating wrench, 30 to 250 lbf·in',
      type: 'indicating',
      range: { min: inch('30'), max: inch('250') },
      resolution: inch('1'),
      calibrationDue: '2031-03-31',
    },
  ],
  steps: [
    { id: 'rest', kind: 'hold', title: 'Hold', text: 'Let the sealant set.' },
    {
      id: 'tighten',
      kind: 'tighten',
      title: 'Tighten',
      text: 'Tighten the bolts.',
      pattern: 'cover',
      tool: 'inch-wrench',
      passes: [{ kind: 'torque', target: foot('10'), window: { min: foot('9'), max: foot('11') } }],
    },
  ],
};

/** One of 11, 11.5 … 13, without chance, a little higher with each session. */
const ringValue = (session: number, fastener: number): number =>
  Math.min(13, 11 + Math.round((session * 2) / 11 + ((session * 7 + fastener * 5) % 3)) / 2);

interface Played {
  readonly calls: readonly Call[];
  readonly entries: readonly Entry[];
}

const BEGINS = Date.UTC(2026, 3, 1, 8);
const DAY = 86_400_000;
export const STOOD_BY = 90;
export const BREAK = 2400;

async function ringSession(index: number): Promise<Played> {
  const calls: Call[] = [];
  const session = `ring-${index}`;
  const entries = await madeSession({
    session,
    procedure: smallProcedure,
    begins: new Date(BEGINS + index * 5 * DAY),
    at: (pass, fastener) => {
      const right = ringValue(index, fastener);
      const said: { value: number; affirmed: boolean }[] = [];
      const words: Said[] = [];
      let questions = 0;
      const read = (each: number, affirmed: boolean): void => {
        said.push({ value: each, affirmed });
        words.push(value(`${each}`), says(affirmed ? 'affirm' : 'negative'));
      };
      if (index % 4 === 1 && fastener === 3) read(right === 12 ? 12.5 : 12, false);
      if (index % 5 === 2 && fastener === 2) read(14, true);
      if (index === 3 && fastener === 1) words.push(says('stand by'), says('continue', STOOD_BY));
      if (index === 6 && fastener === 1) words.push(says('reopen', BREAK), says('affirm'));
      if (index === 4 && fastener === 3) {
        questions += 1;
        const heard = { doubt: 'not sure', readings: [{ fastener: null, value: '12' }] } as const;
        words.push({ meaning: { kind: 'unclear', ...heard }, after: 10 });
      }
      read(right, true);
      if (index === 4 && fastener === 2) {
        questions += 1;
        words.splice(-1, 0, says('silence', 15));
      }
      calls.push({ session, day: index * 5, procedure: 'small-cover', pass, fastener, said, questions });
      return words;
    },
  });
  return { calls, entries };
}

async function inchSession(index: number): Promise<Played> {
  const calls: Call[] = [];
  const session = `inch-${index}`;
  const entries = await madeSession({
    session,
    procedure: inchProcedure,
    begins: new Date(BEGINS + index * DAY),
    at: (pass, fastener) => {
      const read = 118 + index + fastener;
      const said = [{ value: read, affirmed: true }];
      calls.push({ session, day: index, procedure: 'inch-cover', pass, fastener, said, questions: 0 });
      return [value(`${read}`), says('affirm')];
    },
  });
  return { calls, entries };
}

export const played: readonly Played[] = await Promise.all([
  ...Array.from({ length: 12 }, (_, i) => ringSession(i)),
  ...Array.from({ length: 3 }, (_, i) => inchSession(i)),
]);
export const calls = played.flatMap((each) => each.calls);

/** Writes the fleet into folders below a folder, a file for each session. */
export async function writeFleet(folder: string): Promise<void> {
  for (const { entries } of played) {
    const [first] = entries;
    if (!first) continue;
    const place = path.join(folder, first.session.split('-')[0] ?? '');
    await mkdir(place, { recursive: true });
    await writeFile(path.join(place, `${first.session}.bhsession`), await sealedFile(entries));
  }
}
