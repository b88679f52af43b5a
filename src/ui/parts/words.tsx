/** Words of the procedure, as large as they may be. */
import { For, type JSX } from 'solid-js';
import type { Hazard } from '../../procedure/procedure.ts';

/** Letters as large as the sentence allows. */
export function size(text: string): string {
  if (text.length <= 40) return 'short';
  if (text.length <= 70) return 'middling';
  return text.length <= 115 ? 'medium' : 'long';
}

export function Hazards(props: { readonly hazards: readonly Hazard[] }): JSX.Element {
  return (
    <For each={props.hazards}>
      {(hazard) => (
        <p class={`hazard ${hazard.signal}`}>
          <b class="signal">{hazard.signal}</b> {hazard.text}
        </p>
      )}
    </For>
  );
}
