import { For, type JSX } from 'solid-js';
import { SPEEDS, type Speed } from '../../speaking/speed.ts';
import { signals } from '../../words/signals.ts';
import type { Shop } from '../app.tsx';

/** In the order of their loudness. */
const KINDS = ['heard', 'logged', 'question', 'stop'] as const;

/** How fast the voice of this device speaks, whether short signals sound, and what each is like. */
export function SoundChoices(props: { readonly shop: Shop }): JSX.Element {
  return (
    <section aria-labelledby="tones">
      <h2 id="tones">{signals.voiceAndSignals}</h2>
      <label>
        {signals.speed}{' '}
        <select
          onChange={(event) => {
            const speed = event.currentTarget.value as Speed;
            props.shop.devices.setSpeed(speed);
            props.shop.remember({ speed });
          }}
        >
          <For each={SPEEDS}>
            {(speed) => (
              <option value={speed} selected={speed === props.shop.devices.speed()}>
                {signals.speeds[speed]}
              </option>
            )}
          </For>
        </select>
      </label>
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
