/**
 * How many wrong values get into the record unnoticed, and what it costs to keep them out: `npm run simulate`. Readings are
 * said to a simulated recogniser (tests/support/simulated-recogniser.ts) and go through the real language and session rooms,
 * with the closed loop and without it. The counts behind it are in tests/language/confusions.tsv.
 */
import { CONDITIONS } from '../support/simulated-confusions.ts';
import { simulate, type Job, type Tally, type Values } from '../support/simulated-readings.ts';

/** As many as it takes to see one in ten thousand ten times over. */
const MANY = 100_000;
/** Enough where what is looked for is not so rare. */
const FEWER = 20_000;
/** How often a wrong read-back is taken for the right one. No source was to be had for it: three assumptions. */
const LAPSES = [0, 0.01, 0.05];
const SEED = 20_261_125;
const VALUES: readonly Values[] = ['in the window', 'near the window', 'whole scale'];

const jobs = VALUES.flatMap((values) =>
  CONDITIONS.flatMap((condition) => {
    const job = { seed: SEED, condition, values, style: 'digits', lapse: 0, readings: FEWER } as const;
    return [
      ...LAPSES.map((lapse): Job => ({
        ...job,
        lapse,
        readings: lapse === 0 && values !== 'in the window' ? MANY : FEWER,
      })),
      ...(values === 'near the window' ? [{ ...job, style: 'natural' } as const] : []),
      ...(values === 'near the window' ? [{ ...job, smoothing: 'measured only' } as const] : []),
    ];
  }),
);

const percent = (part: number, of: number, places = 1): string => `${((100 * part) / (of || 1)).toFixed(places)} %`;
const perTenThousand = (part: number, of: number): string => ((10_000 * part) / of).toFixed(1);
const sum = (numbers: Iterable<number>): number => [...numbers].reduce((all, each) => all + each, 0);
const most = (counts: ReadonlyMap<string, number>): readonly [string, number][] =>
  [...counts].toSorted(([, a], [, b]) => b - a).slice(0, 6);
const listed = (counts: ReadonlyMap<string, number>): string =>
  most(counts)
    .map(([what, count]) => `${what} (${count})`)
    .join('; ');

function row({ values, condition, lapse, readings, style, smoothing }: Job, tally: Tally): string {
  return [
    `${values}${style === 'natural' ? ', natural' : ''}${smoothing ? `, ${smoothing}` : ''}`,
    condition,
    percent(lapse, 1, 0),
    readings,
    perTenThousand(tally.wrongWithoutLoop, readings),
    perTenThousand(tally.wrongWithLoop, readings),
    percent(sum(tally.askedOfRight.values()), tally.heardRight),
    percent(sum(tally.askedOfWrong.values()), tally.wrongWithoutLoop),
    percent(tally.moreThanOneTry, readings),
    (tally.turns / readings).toFixed(2),
    tally.notLogged,
  ].join(' | ');
}

console.log('Wrong values logged unnoticed, of 10 000 readings, without the loop and with it.');
console.log(
  'values | noise | lapse | readings | without | with | right asked | wrong asked | tries > 1 | turns | by keys',
);
for (const job of jobs) {
  const tally = simulate(job);
  console.log(row(job, tally));
  if (job.lapse > 0) continue;
  const asked = most(tally.askedOfRight).map(([what, count]) => `${what} ${percent(count, tally.heardRight)}`);
  if (asked.length > 0) console.log(`    right, and asked about: ${asked.join('; ')}`);
  console.log(`    misheard oftenest: ${listed(tally.misheard)}`);
  if (tally.leaks.size > 0) console.log(`    logged wrong: ${listed(tally.leaks)}`);
}
