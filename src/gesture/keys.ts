/** What a key, a pedal or a page-turner asks for. Pedals and presenters are keyboards that send these keys. */
export type KeySignal = 'forward' | 'backward';

const SIGNALS: Readonly<Record<string, KeySignal>> = {
  PageDown: 'forward',
  ArrowRight: 'forward',
  PageUp: 'backward',
  ArrowLeft: 'backward',
};

/** Whether the arrows belong to what has the focus: they move in a line of text. Page keys do nothing there. */
const isTyping = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  target.closest('input, textarea, select, [contenteditable]:not([contenteditable="false"])') !== null;

/**
 * Listens for keys on the whole page. A held key counts once.
 * @returns a function that stops listening
 */
export function watchKeys(listener: (signal: KeySignal) => void, page: Window = window): () => void {
  const onKey = (event: KeyboardEvent): void => {
    const signal = SIGNALS[event.key];
    const isPlain = !event.altKey && !event.ctrlKey && !event.metaKey && !event.shiftKey;
    if (!signal || !isPlain || (event.key.startsWith('Arrow') && isTyping(event.target))) return;
    event.preventDefault();
    if (!event.repeat) listener(signal);
  };
  page.addEventListener('keydown', onKey, { capture: true });
  return () => page.removeEventListener('keydown', onKey, { capture: true });
}
