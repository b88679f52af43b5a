import { createEffect, createSignal, onCleanup, type JSX } from 'solid-js';
import type { Signal } from '../../gesture/bindings.ts';
import { watchTouch } from '../../gesture/touch-pad.ts';
import type { Touched } from '../../gesture/touch.ts';
import type { TouchThresholds } from '../../gesture/touch-thresholds.ts';
import { halves } from '../../words/halves.ts';
import { touchedWords } from '../touch-words.ts';
import { signalOfTouch } from '../touch-signal.ts';

/**
 * The whole screen as two halves for a knuckle or an elbow: left goes back, right goes on. The work stays in sight beneath.
 */
export function Halves(props: {
  readonly thresholds: TouchThresholds;
  readonly pixelsPerMm: number;
  /** @param began in milliseconds on the clock of the page */
  readonly onSignal: (signal: Signal, began: number) => void;
  readonly onLeave: () => void;
}): JSX.Element {
  const [last, setLast] = createSignal<Touched | null>(null);
  let pad: HTMLElement | undefined;
  createEffect(() => {
    const thresholds = props.thresholds;
    const pixelsPerMm = props.pixelsPerMm;
    if (!pad) return;
    const on = pad;
    const take = (touched: Touched): void => {
      setLast(touched);
      const signal = signalOfTouch(touched, on.clientWidth / pixelsPerMm);
      if (signal !== null) props.onSignal(signal, touched.from);
    };
    onCleanup(watchTouch(on, thresholds, pixelsPerMm, take));
  });
  return (
    <section class="halves" ref={pad} aria-label={halves.screenAsHalves}>
      <p>
        {halves.back} <span>{halves.backLong}</span>
      </p>
      <div>
        <p role="status">{touchedWords(last())}</p>
        <button type="button" onClick={() => props.onLeave()}>
          {halves.leave}
        </button>
      </div>
      <p>
        {halves.next} <span>{halves.nextLong}</span>
      </p>
    </section>
  );
}
