// Hearing alone, built like the app: shows that the built worker and worklet run under the built page's policy.
import * as bench from '../hearing-bench.ts';

globalThis.hearingBench = bench;
