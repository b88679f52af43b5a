/**
 * A reporter of Vitest that writes down, as JSON, the files of a run that may be run once more: those in which something
 * failed. None, where a test failed that says itself that it is not tried twice, or where an error belonged to no test: what
 * happens once in a hundred runs would look mended.
 */
import { writeFileSync } from 'node:fs';
import type { Reporter } from 'vitest/node';

/** The variable of the environment that names the file to write. */
export const ONCE_MORE = 'BOTHHANDS_ONCE_MORE';

/** What is looked at of a file that was run. */
export interface Ran {
  readonly moduleId: string;
  ok(): boolean;
  readonly children: { allTests(state: 'failed'): Iterable<{ readonly options: { readonly retry?: unknown } }> };
}

export default class OnceMore implements Reporter {
  onTestRunEnd(modules: readonly Ran[], loose: readonly unknown[]): void {
    const file = process.env[ONCE_MORE];
    if (file !== undefined) writeFileSync(file, JSON.stringify(filesToRunAgain(modules, loose)));
  }
}

/** @param loose errors outside any test */
export function filesToRunAgain(modules: readonly Ran[], loose: readonly unknown[]): readonly string[] {
  const failed = modules.filter((module) => !module.ok());
  const tests = failed.flatMap((module) => [...module.children.allTests('failed')]);
  const isFinal = loose.length > 0 || tests.some(({ options }) => options.retry === 0);
  return isFinal ? [] : failed.map(({ moduleId }) => moduleId);
}
