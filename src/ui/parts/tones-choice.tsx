import { For, type JSX } from 'solid-js';
import type { Shop } from '../app.tsx';

/** In the order of their loudness, with what each stands for. */
const SIGNALS = [
  ['heard', 'Heard'],
  ['logged', 'Logged'],
  ['question', 'Question'],
  ['stop', 'Stop'],
] as const;

/** Whether short signals sound on this device, and what each is like. */
export function TonesChoice(props: { readonly shop: Shop }): JSX.Element {
  return (
    <section aria-labelledby="tones">
      <h2 id="tones">Signals</h2>
      <label class="consent">
        <input
          type="checkbox"
          checked={props.shop.devices.hasTones()}
          onChange={(event) => {
            props.shop.devices.setTones(event.currentTarget.checked);
            props.shop.remember({ tones: event.currentTarget.checked });
          }}
        />
        <span>
          A short signal before each answer, louder in a louder room. What it tells stands on the screen as well.
        </span>
      </label>
      <p>
        <For each={SIGNALS}>
          {([kind, word]) => (
            <>
              <button
                type="button"
                disabled={!props.shop.devices.hasTones()}
                onClick={() => void props.shop.devices.tone(kind)}
              >
                {word}
              </button>{' '}
            </>
          )}
        </For>
      </p>
    </section>
  );
}
