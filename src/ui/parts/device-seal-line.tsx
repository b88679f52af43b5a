import { Match, Switch, createResource, type JSX } from 'solid-js';
import type { SessionRecord } from '../../record/session-record.ts';
import { integrity } from '../../words/integrity.ts';
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
            {integrity.notAsSealed(seal().why)}
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
            {integrity.notSealed(seal().why)}
          </p>
        )}
      </Match>
      <Match when={as('missing')}>
        <p class="verification broken" role="alert">
          {integrity.sealMissing}
        </p>
      </Match>
    </Switch>
  );
}

function goodText({ statement, thumbprint }: Extract<ClosingSeal, { kind: 'good' }>, own: string | null): string {
  if (thumbprint !== own) return integrity.sealedByOther(thumbprint);
  const later = madeLater(statement);
  return later === null ? integrity.asSealed(thumbprint) : integrity.asSealedLater(showMoment(later), thumbprint);
}
