import { For, Show, type JSX } from 'solid-js';
import { teachScreen } from '../../words/teach-screen.ts';

/** What keeps a setting from being kept, with its mend. */
export function Faults(props: { readonly faults: readonly { readonly message: string }[] }): JSX.Element {
  return (
    <Show when={props.faults.length > 0}>
      <div class="trouble" role="alert">
        <For each={props.faults}>{({ message }) => <p>{teachScreen.notKept(message)}</p>}</For>
      </div>
    </Show>
  );
}
