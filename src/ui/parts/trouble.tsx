import { Show, type JSX } from 'solid-js';

/** What has gone wrong and the mend, said at once to who cannot see it; nothing while all is well. */
export function Trouble(props: { readonly text: string | null | undefined | false }): JSX.Element {
  return (
    <Show when={props.text}>
      {(text) => (
        <p class="trouble" role="alert">
          {text()}
        </p>
      )}
    </Show>
  );
}
