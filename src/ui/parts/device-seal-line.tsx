import { Match, Switch, createResource, type JSX } from 'solid-js';
import type { SessionRecord } from '../../record/session-record.ts';
import { deviceThumbprint, findDeviceSeal, madeLater, type ClosingSeal } from '../device-seal.ts';
import { messageOf } from '../message.ts';
import { showMoment } from '../moment.ts';

/** Whether a closed record is still the one that this device sealed when it was closed; sounds may have been deleted since. */
export function DeviceSealLine(props: { readonly record: SessionRecord }): JSX.Element {
  const [found] = createResource(async () => ({
    seal: await findDeviceSeal(props.record).catch((error: unknown): ClosingSeal => ({
      kind: 'not made',
      why: messageOf(error),
    })),
    own: await deviceThumbprint(),
  }));
  const as = <Kind extends ClosingSeal['kind']>(kind: Kind): Extract<ClosingSeal, { kind: Kind }> | null => {
    const seal = found()?.seal;
    return seal?.kind === kind ? (seal as Extract<ClosingSeal, { kind: Kind }>) : null;
  };
  return (
    <Switch>
      <Match when={as('bad')}>
        {(seal) => (
          <p class="verification broken" role="alert">
            Not as it was sealed when it was closed: {seal().why}.
          </p>
        )}
      </Match>
      <Match when={as('good')}>
        {(seal) => (
          <p class={`verification ${seal().thumbprint === found()?.own ? 'intact' : 'broken'}`} role="status">
            {goodText(seal(), found()?.own ?? null)}
          </p>
        )}
      </Match>
      <Match when={as('not made')}>
        {(seal) => (
          <p class="verification broken" role="alert">
            It could not be sealed when it was closed, nor now: {seal().why} It is tried again whenever it is looked at.
          </p>
        )}
      </Match>
      <Match when={as('missing')}>
        <p class="verification broken" role="alert">
          The seal of its closing is missing: it was removed from this device, or never made. Whether the record was
          changed since it was closed cannot be told here.
        </p>
      </Match>
    </Switch>
  );
}

function goodText({ statement, thumbprint }: Extract<ClosingSeal, { kind: 'good' }>, own: string | null): string {
  if (thumbprint !== own) return `It is sealed by another key than that of this device: ${thumbprint}.`;
  const later = madeLater(statement);
  const sealed = `by the key of this device, ${thumbprint}.`;
  return later === null
    ? `As it was sealed when it was closed, ${sealed}`
    : `It could not be sealed when it was closed. As it was sealed later, ${showMoment(later)}, ${sealed}`;
}
