import { createEffect, createSignal, on, onCleanup, Show, type JSX } from 'solid-js';
import { lettersReach } from '../../words/letters-reach.ts';
import type { Display } from '../display.ts';
import { addressOf } from '../router.ts';
import { GLANCE, reachOf } from '../view/legible.ts';

/** What is read at a glance. */
const GLANCED_AT = '.call .fastener-number, .call .value:not(.instead)';

/** The way to the display settings, with how far away the large digits can be read as they stand there. */
export function LettersReach(props: {
  readonly display: Display;
  readonly session: string;
  /** Changes when what is shown may have changed. */
  readonly shown: unknown;
}): JSX.Element {
  const [size, setSize] = createSignal<number | null>(null);
  /** After the letters were fitted into their room, which follows what is shown as well. */
  const measure = (): void => {
    const sizes = [...document.querySelectorAll(GLANCED_AT)].map((each) => parseFloat(getComputedStyle(each).fontSize));
    if (sizes.length > 0) setSize(Math.min(...sizes));
  };
  createEffect(
    on([() => props.shown, () => props.display.letters(), () => props.display.choice()], () => queueMicrotask(measure)),
  );
  window.addEventListener('resize', measure);
  onCleanup(() => window.removeEventListener('resize', measure));

  /** In metres; null until large digits have stood on the screen. */
  const reach = (): number | null => {
    const pixels = size();
    // Rounded down: nobody is promised more than is there.
    return pixels === null ? null : Math.floor(reachOf(pixels, GLANCE, props.display.letters()) * 10 + 1e-6) / 10;
  };
  const isShort = (): boolean => (reach() ?? Infinity) < props.display.choice().distance;
  return (
    <a
      class="letters-reach"
      classList={{ short: isShort() }}
      href={addressOf({ kind: 'display', session: props.session })}
    >
      <Show when={reach()} fallback={lettersReach.display}>
        {(metres) => (
          <>{lettersReach.digitsTo(<span class="reach">{lettersReach.metres(metres().toFixed(1))}</span>)}</>
        )}
      </Show>
      {isShort() ? lettersReach.notTo(props.display.choice().distance) : ''}
    </a>
  );
}
