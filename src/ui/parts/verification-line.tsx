import type { JSX } from 'solid-js';
import type { Verification } from '../../record/entry.ts';
import { integrity } from '../../words/integrity.ts';

/** Whether a record is whole; where it is not, the place, the reason, and what of it can still be trusted. */
export function VerificationLine(props: { readonly verification: Verification; readonly found: number }): JSX.Element {
  return (
    <p
      class={`verification ${props.verification.kind}`}
      role={props.verification.kind === 'broken' ? 'alert' : 'status'}
    >
      {props.verification.kind === 'intact'
        ? integrity.intact(props.verification.entries)
        : integrity.broken(props.verification.at, props.verification.why, props.found)}
    </p>
  );
}
