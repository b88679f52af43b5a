import { Refused } from '../../src/units/index.ts';

/** The code of the refusal that a call ends in. Any other outcome is a failure of the test, with its own message. */
export function refusal(call: () => unknown): string {
  let result: unknown;
  try {
    result = call();
  } catch (error) {
    if (error instanceof Refused) return String(error.code);
    throw error;
  }
  throw new Error(`Expected a refusal; the call returned ${JSON.stringify(result)}.`);
}
