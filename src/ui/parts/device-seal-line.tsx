import { Match, Switch, createResource, type JSX } from 'solid-js';
import type { SessionRecord } from '../../record/session-record.ts';
import { deviceThumbprint, findDeviceSeal } from '../device-seal.ts';

/** Whether a closed record is still the one that this device sealed when it was closed; sounds may have been deleted since. */
export function DeviceSealLine(props: { readonly record: SessionRecord }): JSX.Element {
  const [found] = createResource(async () => ({
    // Where the browser keeps no seals, there is none.
    seal: await findDeviceSeal(props.record).catch(() => ({ kind: 'none' }) as const),
    own: await deviceThumbprint(),
  }));
  const good = () => {
    const seal = found()?.seal;
    return seal?.kind === 'good' ? seal : null;
  };
  const bad = () => {
    const seal = found()?.seal;
    return seal?.kind === 'bad' ? seal : null;
  };
  return (
    <Switch>
      <Match when={bad()}>
        {(seal) => (
          <p class="verification broken" role="alert">
            Not as it was sealed when it was closed: {seal().why}.
          </p>
        )}
      </Match>
      <Match when={good()}>
        {(seal) => (
          <p class={`verification ${seal().thumbprint === found()?.own ? 'intact' : 'broken'}`} role="status">
            {seal().thumbprint === found()?.own
              ? `As it was sealed when it was closed, by the key of this device, ${seal().thumbprint}.`
              : `It is sealed by another key than that of this device: ${seal().thumbprint}.`}
          </p>
        )}
      </Match>
      <Match when={found()?.seal.kind === 'none'}>
        <p class="verification" role="status">
          No seal of its closing is on this device: it could not be made, was removed, or this program made none then.
        </p>
      </Match>
    </Switch>
  );
}
