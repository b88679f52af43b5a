import { readFile } from 'node:fs/promises';

/** As far as it is looked at here; the app itself checks the rest at its door. */
interface Demo {
  readonly steps: readonly { readonly id: string; readonly passes?: readonly { readonly kind: string }[] }[];
}

/**
 * The oil cooler's demonstration, cut to the steps around its main ring of ten studs: the nuts are started by hand and
 * tightened. All else is as it is in the file.
 * @param snugFirst whether a snug pass is put before its own two
 */
export async function demoRing({ snugFirst = false } = {}): Promise<object> {
  const demo = JSON.parse(await readFile('demo-data/ropeway-oil-cooler.json', 'utf8')) as Demo;
  const snug = { kind: 'snug', name: 'snug' };
  const steps = demo.steps
    .filter(({ id }) => id === 'refit' || id === 'tighten-ring')
    .map((step) => (snugFirst && step.passes ? { ...step, passes: [snug, ...step.passes] } : step));
  if (steps.length !== 2) throw new Error('The demonstration has no main ring any more: name its steps here.');
  return { ...demo, steps };
}

/** The order of the ring, as the file has it: crosswise. */
export const RING_ORDER = [1, 6, 3, 8, 5, 10, 7, 2, 9, 4] as const;
