/** A value of something else than a torque tool: what is read, after which wait, and the read-back. */
import { Show, createSignal, onCleanup, type JSX } from 'solid-js';
import { asked } from '../../words/asked.ts';
import { measured } from '../../words/measured.ts';
import type { MeasureView } from '../view/measure.ts';

export function Measured(props: { readonly measure: MeasureView }): JSX.Element {
  return (
    <div
      class="call measured"
      classList={{ 'to-confirm': props.measure.pending !== null, out: props.measure.isOutside }}
    >
      <Show
        when={props.measure.pending}
        fallback={
          <>
            <p class="question">{measured.sayIt}</p>
            <Show when={props.measure.outside}>
              {(outside) => <p class="last-reading">{measured.readOutside(outside())}</p>}
            </Show>
            <Wait measure={props.measure} />
          </>
        }
      >
        {(pending) => (
          <>
            <p class="value">
              {pending().value} <span class="unit">{pending().unit}</span>
            </p>
            <p class="verdict">{pending().verdict}</p>
            <p class="question">{asked.isThatCorrect}</p>
          </>
        )}
      </Show>
      <p class="window">
        <Show when={props.measure.window} fallback={measured.inUnit(props.measure.what, props.measure.unit)}>
          {(window) => <>{measured.window(props.measure.what, window(), props.measure.unit)}</>}
        </Show>
      </p>
    </div>
  );
}

function Wait(props: { readonly measure: MeasureView }): JSX.Element {
  const [now, setNow] = createSignal(Date.now());
  const timer = setInterval(() => setNow(Date.now()), 1000);
  onCleanup(() => clearInterval(timer));
  const left = (): number => {
    const { wait } = props.measure;
    return wait?.over ? Math.max(0, Math.ceil((wait.over - now()) / 1000)) : 0;
  };
  return (
    <Show when={props.measure.wait}>
      {(wait) => (
        <p class="question">
          <Show when={wait().over !== null} fallback={measured.nextBeginsWait(wait().minutes)}>
            <Show when={left() > 0} fallback={measured.waitIsOver}>
              {measured.wait(`${Math.floor(left() / 60)}:${String(left() % 60).padStart(2, '0')}`)}
            </Show>
          </Show>
        </p>
      )}
    </Show>
  );
}
