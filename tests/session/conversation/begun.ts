/** Work that has come some way by the book, so that conversations meet every part of a step and what comes after it. */
import type { Job } from './job.ts';
import { Loop } from './loop.ts';
import { calledIn, hear, settingIn, type Model } from './model.ts';
import type { Word } from './words.ts';

export interface Begun {
  readonly loop: Loop;
  readonly model: Model;
}

const known = new Map<string, Promise<Begun>>();

/** Both with the first `count` calls settled. */
export async function begunAt(job: Job, isSealed: boolean, count: number): Promise<Begun> {
  const { loop, model } = await begin(job, isSealed, Math.min(count, job.rules.calls.length));
  return { loop: loop.copy(), model };
}

function begin(job: Job, isSealed: boolean, count: number): Promise<Begun> {
  const key = `${job.key}, ${isSealed}, ${count}`;
  const begun =
    known.get(key) ?? (count === 0 ? atFirst(job, isSealed) : begin(job, isSealed, count - 1).then(oneMore));
  known.set(key, begun);
  return begun;
}

async function atFirst(job: Job, isSealed: boolean): Promise<Begun> {
  const model: Model = {
    rules: job.rules,
    place: 'at it',
    isStandingBy: false,
    isLate: false,
    isBroken: false,
    taken: [],
  };
  return { loop: await Loop.open(job, isSealed), model };
}

/** The next call, with a value as it is called, its witness where one is wanted, and the word. */
async function oneMore({ loop: before, model }: Begun): Promise<Begun> {
  const loop = before.copy();
  const call = calledIn(model);
  const text = (call && settingIn(model, call)) ?? '2.5';
  const reading = { fastener: null, value: text };
  await loop.act({ kind: 'reading', reading }, 'key');
  if (model.rules.confirm === 'witness each') await loop.act({ kind: 'witness', reading }, 'key');
  await loop.act({ kind: 'affirm' }, 'touch');
  const words: readonly Word[] = [
    { word: 'value', stud: null, text, isDoubted: false, isAlike: false },
    { word: 'witness', stud: null, text },
    { word: 'affirm' },
  ];
  return { loop, model: words.reduce(hear, model) };
}
