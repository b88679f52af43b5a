import { Show, createResource, type JSX } from 'solid-js';
import { addressOf } from '../router.ts';
import { deviceThumbprint } from '../device-seal.ts';
import { UnsavedLine } from './unsaved-line.tsx';

/** What is to be done with a record that was just closed: it is sealed here, and kept nowhere else. */
export function ClosedNote(props: { readonly session: string; readonly entries: number }): JSX.Element {
  const [thumbprint] = createResource(deviceThumbprint);
  return (
    <section class="closed-note" aria-label="The closed record">
      <UnsavedLine session={props.session} entries={props.entries} />
      <Show
        when={thumbprint()}
        fallback={<p>This browser keeps no key: the record could not be sealed on this device.</p>}
      >
        {(key) => (
          <p>
            Sealed by the key of this device: <code>{key()}</code>
          </p>
        )}
      </Show>
      <a class="button" href={addressOf({ kind: 'replay', session: props.session })}>
        Replay and save
      </a>
    </section>
  );
}
