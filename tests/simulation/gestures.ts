/**
 * How many gestures the camera watcher finds, how many it sees where there are none, how late it tells, and what a picture
 * costs, on drawn films (tests/support/gesture-clips): `npm run bench:gestures`. Seeds choose people, places and cameras. A
 * range that anything was fitted or chosen on says nothing about how good it is: take one that nobody has looked at.
 */
import { parseArgs } from 'node:util';
import { machine, percentile } from '../../src/cli/bench/measure.ts';
import { busyFilm, gestureFilm, ringFilm, SLOW_RATES, type Film } from '../support/gesture-clips/film.ts';
import { LATEST_MS, score, type Found } from '../support/gesture-clips/score.ts';

const USAGE = `npm run bench:gestures -- [--seed N] [--films N] [--busy N] [--ring N] [--slow N] [--list]
  --seed N   the first film's seed (1000000); films of work take the seeds from N + 500000 on
  --films N  films of five gestures, one of each kind (40)
  --busy N   films of a minute of work without any gesture (20)
  --ring N   films of a minute of work right before the camera: hands as large as one that waves (0)
  --slow N   films of gestures and of work before a camera too slow for them, where nothing but a cover may be told (10)
  --list     names each gesture that was missed, and each that was seen where there was none`;

/** Films of work have their own seeds: the same people and places would say the same twice. */
const WORK = 500_000;
const RING = 550_000;
const SLOW = 570_000;
const MINUTE = 60;

const { values } = parseArgs({
  options: {
    seed: { type: 'string', default: '1000000' },
    films: { type: 'string', default: '40' },
    busy: { type: 'string', default: '20' },
    ring: { type: 'string', default: '0' },
    slow: { type: 'string', default: '10' },
    list: { type: 'boolean', default: false },
    help: { type: 'boolean', default: false },
  },
});
const [seed, films, busy, ring, slow] = [values.seed, values.films, values.busy, values.ring, values.slow].map(
  Number,
) as [number, number, number, number, number];
const isWhole = [seed, films, busy, ring, slow].every((each) => Number.isInteger(each) && each >= 0);
if (values.help || !isWhole) {
  console.log(USAGE);
  process.exit(values.help ? 0 : 2);
}

const costs: number[] = [];
const late: number[] = [];
const kinds = new Map<string, { found: number; all: number }>();
const percent = (part: number, of: number): string => `${((100 * part) / (of || 1)).toFixed(1)} %`;
const list = (line: string): void => {
  if (values.list) console.log(line);
};

function wrongIn(film: Film, at: number, wrong: readonly Found[]): number {
  for (const { gesture, told } of wrong) {
    const going = film.acts.filter(({ from, to }) => told >= from * 1000 && told <= to * 1000 + 1000);
    const during = going.map(({ name }) => name).join(', ') || 'nothing';
    list(
      `film ${at} (${film.about}): ${gesture.kind} seen at ${(told / 1000).toFixed(1)} s, ` +
        `confidence ${gesture.confidence.toFixed(2)}, during: ${during}`,
    );
  }
  return wrong.length;
}

console.log(machine());
let [besides, seconds] = [0, 0];
for (let at = seed; at < seed + films; at++) {
  const film = gestureFilm(at);
  const { acts, wrong } = score(film, {}, costs);
  seconds += film.seconds;
  for (const { act, found, lateMs } of acts) {
    const kind = kinds.get(act.name) ?? { found: 0, all: 0 };
    kinds.set(act.name, { found: kind.found + (found ? 1 : 0), all: kind.all + 1 });
    if (found) late.push(lateMs);
    else list(`film ${at} (${film.about}): ${act.name} of ${act.from.toFixed(1)} to ${act.to.toFixed(1)} s is missed`);
  }
  besides += wrongIn(film, at, wrong);
}
const found = [...kinds.values()].reduce((sum, kind) => sum + kind.found, 0);
const all = [...kinds.values()].reduce((sum, kind) => sum + kind.all, 0);
console.log(
  `Found within ${LATEST_MS} ms of their end: ${found} of ${all} gestures (${percent(found, all)}; goal 97 %)`,
);
for (const [kind, count] of kinds) console.log(`  ${kind}: ${count.found} of ${count.all}`);
console.log(`Seen beside them, or told too late: ${besides} in ${(seconds / MINUTE).toFixed(1)} minutes`);
console.log(
  `Told after the end of the gesture: median ${percentile(late, 0.5).toFixed(0)} ms, ` +
    `95 % within ${percentile(late, 0.95).toFixed(0)} ms`,
);
for (const [what, from, minutes, filmOf] of [
  ['work', seed + WORK, busy, busyFilm],
  ['work right before the camera', seed + RING, ring, ringFilm],
] as const) {
  if (minutes === 0) continue;
  let wrong = 0;
  for (let at = from; at < from + minutes; at++) {
    const film = filmOf(at, MINUTE);
    wrong += wrongIn(film, at, score(film, {}, costs).wrong);
  }
  console.log(
    `Seen where there was only ${what}: ${wrong} in ${minutes} minutes ` +
      `(${((10 * wrong) / minutes).toFixed(1)} in ten; goal under 1)`,
  );
}
if (slow > 0) {
  const told: Found[] = [];
  let [covers, seen] = [0, 0];
  for (let at = seed + SLOW; at < seed + SLOW + slow; at++) {
    for (const film of [gestureFilm(at, 5, undefined, SLOW_RATES), busyFilm(at, MINUTE, SLOW_RATES)]) {
      const { acts, wrong } = score(film, {}, costs);
      covers += acts.filter(({ act }) => act.gesture === 'cover').length;
      seen += acts.filter(({ act, found }) => act.gesture === 'cover' && found).length;
      told.push(...acts.flatMap(({ act, found }) => (act.gesture !== 'cover' && found ? [found] : [])));
      wrongIn(film, at, wrong);
      told.push(...wrong);
    }
  }
  console.log(
    `Before a camera of ${SLOW_RATES.join(', ')} pictures a second: ${seen} of ${covers} covers, and ${told.length} others told ` +
      `(goal none) in ${slow} films of gestures and ${slow} minutes of work`,
  );
}
console.log(`A picture costs ${percentile(costs, 0.5).toFixed(2)} ms (median; goal under 4)`);
