/** Words of the procedure, as large as they may be. */
import { For, Show, type JSX } from 'solid-js';
import type { Hazard } from '../../procedure/procedure.ts';
import { wanted } from '../../words/wanted.ts';

/** Letters as large as the sentence allows. */
export function size(text: string): string {
  if (text.length <= 40) return 'short';
  if (text.length <= 70) return 'middling';
  return text.length <= 115 ? 'medium' : 'long';
}

/** What to beware of, each with its signal word, before the step. */
export function Hazards(props: { readonly hazards: readonly Hazard[] }): JSX.Element {
  return (
    <For each={props.hazards}>
      {(hazard) => (
        <p class={`hazard ${hazard.signal}`}>
          <SignalWord hazard={hazard} /> <span class="text">{hazard.text}</span>
        </p>
      )}
    </For>
  );
}

/** The signal word on a ground of its own, with the alert symbol where it is people who are harmed (ANSI Z535.6). */
export function SignalWord(props: { readonly hazard: Pick<Hazard, 'signal' | 'consequence'> }): JSX.Element {
  return (
    <b class={`signal ${props.hazard.signal}`}>
      <Show when={props.hazard.consequence === 'person' && props.hazard.signal !== 'notice'}>
        <svg class="alert-symbol" viewBox="0 0 24 22" aria-hidden="true">
          <path class="triangle" d="M12 1 L23 21 L1 21 Z" />
          <path class="mark" d="M12 8 V14.5 M12 17 V18.6" />
        </svg>
      </Show>
      {wanted.signalWord[props.hazard.signal]}
    </b>
  );
}
