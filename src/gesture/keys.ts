/** Switches at the door of the page: pedals, page-turners and presenters are keyboards; headsets send media keys. */
import { signalOf, switchOf, type Bindings, type Signal } from './bindings.ts';
import { mediaKeysIn, watchMediaButtons } from './media-buttons.ts';
import { afterKey, NO_PRESSES, type KeyInput, type Pressed } from './presses.ts';

/** A press of a switch and what it asks for; null where that press is bound to nothing. */
export interface SwitchPress extends Pressed {
  readonly signal: Signal | null;
}

/** Page keys and media keys do nothing where one types; all others move or write there, so there they are left alone. */
const TAKEN_WHILE_TYPING = /^(Page|Media|F\d)/;

const isTyping = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  target.closest('input, textarea, select, [contenteditable]:not([contenteditable="false"])') !== null;

/** Whether this event is one of these keys, meant for the page as a whole. */
const isOurs = (event: KeyboardEvent, bindings: Bindings): boolean =>
  switchOf(bindings, event.key) !== null &&
  !(event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) &&
  (TAKEN_WHILE_TYPING.test(event.key) || !isTyping(event.target));

/**
 * Listens to the switches on the whole page. What is bound is asked anew with each event; the keys themselves stay the same. A key that is held and repeats itself is one press.
 * @returns a function that stops listening
 */
export function watchSwitches(
  bindings: () => Bindings,
  listener: (press: SwitchPress) => void,
  page: Window = window,
): () => void {
  let presses = NO_PRESSES;
  let timer: number | undefined;

  function take(input: KeyInput): void {
    const after = afterKey(presses, input, bindings());
    presses = after.presses;
    page.clearTimeout(timer);
    if (after.wakeAt !== null)
      timer = page.setTimeout(() => take({ kind: 'time', at: now() }), Math.max(0, after.wakeAt - now()));
    const bound = bindings();
    for (const press of after.done) listener({ ...press, signal: signalOf(bound, press.of, press.kind) });
  }
  const now = (): number => page.performance.now();

  const onDown = (event: KeyboardEvent): void => {
    if (!isOurs(event, bindings())) return;
    event.preventDefault();
    if (!event.repeat) take({ kind: 'down', key: event.key, at: now() });
  };
  // With whatever modifier it comes up: it went down.
  const onUp = (event: KeyboardEvent): void => take({ kind: 'up', key: event.key, at: now() });
  const onBlur = (): void => take({ kind: 'lost', at: now() });
  // First: it keeps keys from the page that only repeat an action. A media button has no length: it is down and up at once.
  const stopMedia = watchMediaButtons(mediaKeysIn(bindings()), page, (key) => {
    take({ kind: 'down', key, at: now() });
    take({ kind: 'up', key, at: now() });
  });
  page.addEventListener('keydown', onDown, { capture: true });
  page.addEventListener('keyup', onUp, { capture: true });
  page.addEventListener('blur', onBlur);
  return () => {
    page.clearTimeout(timer);
    page.removeEventListener('keydown', onDown, { capture: true });
    page.removeEventListener('keyup', onUp, { capture: true });
    page.removeEventListener('blur', onBlur);
    stopMedia();
  };
}
