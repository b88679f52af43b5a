import type { JSX } from 'solid-js';
import type { Verification } from '../../record/entry.ts';

/** Whether a record is whole; where it is not, the place, the reason, and what of it can still be trusted. */
export function VerificationLine(props: { readonly verification: Verification; readonly found: number }): JSX.Element {
  return (
    <p
      class={`verification ${props.verification.kind}`}
      role={props.verification.kind === 'broken' ? 'alert' : 'status'}
    >
      {verificationText(props.verification, props.found)}
    </p>
  );
}

function verificationText(verification: Verification, found: number): string {
  if (verification.kind === 'intact') return `Intact: ${entries(verification.entries)} follow from one another.`;
  const { at, why } = verification;
  const before = at === 0 ? 'Nothing of it can be trusted.' : `Only the ${entries(at)} before it can be trusted.`;
  return `Broken at entry ${at}: ${why}. ${before} Found: ${entries(found)}.`;
}

const entries = (count: number): string => (count === 1 ? '1 entry' : `${count} entries`);
