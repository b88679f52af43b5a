/** What the record costs: adding to it, checking it, opening it. */
import { openSessionFile, type SessionFile } from '../../record/sealed-file.ts';
import { stateAfter } from '../../record/session-record.ts';
import { costOfWaiting, percentile, say, type Waited } from './measure.ts';
import { PASSES } from './ring.ts';
import { entriesOf, eventsOf, fileOf, makeKey } from './sealed.ts';

/** Studs for about a thousand and about ten thousand events: two for each reading. */
const [FEW, MANY] = [83, 833];
const ROUNDS = 3;

export async function benchRecord(): Promise<void> {
  const few = await measure(FEW);
  const many = await measure(MANY);
  console.log(`A record of ${many.events} events against one of ${few.events}:`);
  const last = (took: readonly number[]): readonly number[] => took.slice(-500).map((each) => each * 1000);
  const [early, late] = [last(few.took), last(many.took)];
  say(
    'Adding one entry (canonical form and hash; without the disk), the last 500 of each',
    `ratio of medians ${(percentile(late, 0.5) / percentile(early, 0.5)).toFixed(2)} (expected about 1); median ${percentile(late, 0.5).toFixed(0)} µs, 95 % below ${percentile(late, 0.95).toFixed(0)} µs`,
  );
  const perEvent = ({ check, events }: Measured): number => check.processor / events;
  const seconds = many.check.clock / 1000;
  say(
    'Checking a sealed file',
    `ratio per event ${(perEvent(many) / perEvent(few)).toFixed(2)} (expected about 1: linear); ${(many.bytes / 1e6 / seconds).toFixed(1)} MB/s, ${Math.round(many.events / seconds)} events/s; ${inMilliseconds(many.check)}`,
  );
  say(
    `Opening a session of ${many.events} events, checked and folded to its end (goal: under 1000 ms)`,
    inMilliseconds(many.open),
  );
}

type Measured = Awaited<ReturnType<typeof measure>>;

const inMilliseconds = ({ clock, processor }: Waited): string =>
  `${Math.round(clock)} ms, ${Math.round(processor)} ms of the processors`;

async function measure(studs: number) {
  const events = await eventsOf(studs);
  const { entries, took } = await entriesOf(events, `ring-${studs}`);
  const bytes = await fileOf(entries, `ring-${studs}`, await makeKey());
  const open = async (): Promise<SessionFile> => openSessionFile(bytes, { now: new Date().toISOString() });
  const opened = await open();
  if (opened.kind === 'refused' || opened.verdict.kind !== 'intact')
    throw new Error('The measured file is not intact.');
  if (events.length < 2 * PASSES * studs) throw new Error('The measured job was not worked to its end.');
  return {
    events: events.length,
    bytes: bytes.length,
    took,
    check: await costOfWaiting(open, ROUNDS),
    open: await costOfWaiting(async () => {
      const file = await open();
      if (file.kind === 'opened' && file.session.kind === 'readable')
        stateAfter(file.session.record, file.session.record.entries.length);
    }, ROUNDS),
  };
}
