import { For, type JSX } from 'solid-js';
import { signals } from '../../words/signals.ts';
import type { Shop } from '../app.tsx';

/** In the order of their loudness. */
const KINDS = ['heard', 'logged', 'question', 'stop'] as const;

/** Whether short signals sound on this device, and what each is like. */
export function TonesChoice(props: { readonly shop: Shop }): JSX.Element {
  return (
    <section aria-labelledby="tones">
      <h2 id="tones">{signals.signals}</h2>
      <label class="consent">
        <input
          type="checkbox"
          checked={props.shop.devices.hasTones()}
          onChange={(event) => {
            props.shop.devices.setTones(event.currentTarget.checked);
            props.shop.remember({ tones: event.currentTarget.checked });
          }}
        />
        <span>{signals.whatTheyAre}</span>
      </label>
      <p>
        <For each={KINDS}>
          {(kind) => (
            <>
              <button
                type="button"
                disabled={!props.shop.devices.hasTones()}
                onClick={() => void props.shop.devices.tone(kind)}
              >
                {signals[kind]}
              </button>{' '}
            </>
          )}
        </For>
      </p>
    </section>
  );
}
