/** The screen while both hands carry: one call, large, and how long it is held. */
import { Show, createSignal, onCleanup, type JSX } from 'solid-js';
import { sentence } from '../../language/say.ts';
import { held } from '../../words/held.ts';
import type { HeldView } from '../view.ts';

export function Held(props: { readonly held: HeldView }): JSX.Element {
  return (
    <div class="held call">
      <p class="question">{held.heldFor(<HeldTime since={props.held.since} />)}</p>
      <p class="value instead">{props.held.call === null ? held.held : sentence(props.held.call)}</p>
      <Show when={props.held.orientation}>
        {(orientation) => <p class="sentence middling">{sentence(orientation())}</p>}
      </Show>
      <p class="note">{props.held.ahead.length > 0 ? held.thenComes(props.held.ahead) : held.setDown}</p>
    </div>
  );
}

/** Counts on by itself; a screen reader is told the time by the voice, not once a second. */
function HeldTime(props: { readonly since: string }): JSX.Element {
  const [now, setNow] = createSignal(Date.now());
  const timer = setInterval(() => setNow(Date.now()), 1000);
  onCleanup(() => clearInterval(timer));
  const seconds = (): number => Math.max(0, Math.floor((now() - Date.parse(props.since)) / 1000));
  return (
    <span class="held-time" aria-live="off">
      {Math.floor(seconds() / 60)}:{String(seconds() % 60).padStart(2, '0')}
    </span>
  );
}

export function HelpCalled(props: { readonly help: string }): JSX.Element {
  return (
    <p class="help-called" role="alert">
      {props.help}
    </p>
  );
}
