import { For, Show, type JSX } from 'solid-js';

/** What keeps a setting from being kept, with its mend. */
export function Faults(props: { readonly faults: readonly { readonly message: string }[] }): JSX.Element {
  return (
    <Show when={props.faults.length > 0}>
      <div class="trouble" role="alert">
        <For each={props.faults}>{({ message }) => <p>{message} Not kept until then.</p>}</For>
      </div>
    </Show>
  );
}
