import type { FailureCode } from '../hearing/failures.ts';
import type { HearingState } from '../hearing/types.ts';
import { ear } from '../words/ear.ts';

/** The ear mends most faults by itself sooner; the screen shows them meanwhile. */
const PATIENCE_MS = 3_000;

/**
 * Says that an ear that worked hears no more, and that it hears again: whose hands and eyes are at the work would talk to
 * nobody. The screen says it at once and in full.
 */
export function createEarReport(say: (text: string) => void): (state: HearingState) => void {
  let hasWorked = false;
  let told = false;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let failing: FailureCode | null = null;

  function tell(): void {
    timer = undefined;
    if (failing === null) return;
    told = true;
    say(sayFailure(failing));
  }

  return (state) => {
    switch (state.kind) {
      case 'failed':
        failing = state.failure.code;
        if (hasWorked && !told) timer ??= setTimeout(tell, PATIENCE_MS);
        return;
      // An engine that is started again is no ear yet.
      case 'loading':
        return;
      case 'off':
        hasWorked = false;
        break;
      case 'listening':
      case 'hearing':
      case 'muted':
        hasWorked = true;
        if (told) say(ear.listeningAgain);
    }
    clearTimeout(timer);
    timer = undefined;
    failing = null;
    told = false;
  };
}

function sayFailure(code: FailureCode): string {
  if (code === 'microphone held') return ear.heldBack;
  return code.startsWith('microphone') ? ear.microphoneLost : ear.hearingFailed;
}
