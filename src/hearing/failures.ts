import { hearingFailures } from '../words/hearing-failures.ts';

/** What can go wrong with hearing. The code is for the program, the sentence for a person, the detail for a report. */
export interface HearingFailure {
  readonly code: FailureCode;
  readonly sentence: string;
  readonly detail: string;
}

export type FailureCode = keyof typeof hearingFailures;

export const failure = (code: FailureCode, detail = ''): HearingFailure => ({
  code,
  sentence: hearingFailures[code],
  detail,
});

/** Carries a failure through the inside of this room; it does not leave it. */
export class HearingError extends Error {
  readonly failure: HearingFailure;

  constructor(code: FailureCode, detail = '') {
    super(detail ? `${code}: ${detail}` : code);
    this.failure = failure(code, detail);
  }
}

/** Without a secure context neither microphone, checksum nor lock exists. @throws HearingError `page not secure` */
export function needSecureContext(): void {
  if (!isSecureContext) throw new HearingError('page not secure', location.origin);
}

export const textOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));
