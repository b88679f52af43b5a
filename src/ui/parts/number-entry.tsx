import { For, createEffect, createSignal, on, onCleanup, onMount, type JSX } from 'solid-js';
import { valueKeys } from '../../words/value-keys.ts';
import { deleted, isValue, keyedIn, typedOver } from '../second-entry.ts';

/** Places never change. The point and the nought lie beside the figures, so that three rows are enough. */
const KEYS = ['7', '8', '9', 'delete', '4', '5', '6', '.', '1', '2', '3', '0'] as const;

interface Props {
  /** What a value is wanted of now; null where none is: then every key is dim and does nothing. */
  readonly of: number | null;
  readonly unit: string;
  /** Takes the value. @returns whether it was taken; where it was not, it stays to be keyed in again. */
  readonly onRead: (value: string) => Promise<boolean>;
}

/** A value by large keys or by the keyboard, and the button that says it. */
export function NumberEntry(props: Props): JSX.Element {
  const [text, setText] = createSignal('');
  const isWanted = (): boolean => props.of !== null;
  const isReady = (): boolean => isWanted() && isValue(text());
  // What was keyed in for one reading is never sent for another.
  createEffect(
    on(
      () => props.of,
      () => setText(''),
    ),
  );

  function press(key: string): void {
    if (isWanted()) setText(key === 'delete' ? deleted(text()) : keyedIn(text(), key));
  }
  let isUnderWay = false;
  async function read(): Promise<void> {
    if (!isReady() || isUnderWay) return;
    isUnderWay = true;
    if (await props.onRead(text())) setText('');
    isUnderWay = false;
  }

  onMount(() => {
    const onKey = (event: KeyboardEvent): void => {
      if (event.altKey || event.ctrlKey || event.metaKey || event.target instanceof HTMLInputElement) return;
      const key = event.key === 'Backspace' ? 'delete' : event.key;
      if (key === 'Enter' && !(event.target instanceof HTMLElement && event.target.closest('button, a'))) void read();
      else if (/^(\d|[.,]|delete)$/.test(key)) press(key);
      else return;
      event.preventDefault();
    };
    document.addEventListener('keydown', onKey);
    onCleanup(() => document.removeEventListener('keydown', onKey));
  });

  return (
    <form
      class="number-entry"
      classList={{ wanted: isWanted() }}
      aria-label={valueKeys.valueThatYouRead}
      onSubmit={(event) => {
        event.preventDefault();
        void read();
      }}
    >
      <label class="display">
        <span class="hidden">{valueKeys.valueInUnit(props.unit)}</span>
        <input
          // Its own keys are large enough for a glove; those of the system are not.
          inputmode="none"
          autocomplete="off"
          placeholder={valueKeys.nothingYet}
          readonly={!isWanted()}
          value={text()}
          onInput={(event) => {
            const typed = typedOver(event.currentTarget.value);
            if (typed !== null) setText(typed);
            // What leads to no value is not taken in.
            event.currentTarget.value = text();
          }}
        />
        <span class="unit" aria-hidden="true">
          {props.unit}
        </span>
      </label>
      <button type="submit" class="reads" classList={{ primary: isReady() }} aria-disabled={!isReady()}>
        {valueKeys.witnessReads}
      </button>
      <For each={KEYS}>
        {(key) => (
          <button
            type="button"
            class="key"
            aria-label={nameOf(key)}
            aria-disabled={!isWanted()}
            // A tap leaves the focus where it is: Enter after it reads the value, and does not press this key again.
            onMouseDown={(event) => event.preventDefault()}
            onClick={() => press(key)}
          >
            {key === 'delete' ? '⌫' : key}
          </button>
        )}
      </For>
      <output class="hidden" aria-live="polite">
        {text()}
      </output>
    </form>
  );
}

function nameOf(key: (typeof KEYS)[number]): string {
  if (key === 'delete') return valueKeys.deleteKey;
  return key === '.' ? valueKeys.pointKey : key;
}
