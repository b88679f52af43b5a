/** A value of something else than a torque tool: what is read, after which wait, and the read-back. */
import { Show, createSignal, onCleanup, type JSX } from 'solid-js';
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
            <p class="value instead">read it</p>
            <Show when={props.measure.outside}>
              {(outside) => <p class="last-reading">Read {outside()}. Put it right and read again, or leave open.</p>}
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
            <p class="question">Is that correct? Affirm or negative.</p>
          </>
        )}
      </Show>
      <p class="window">
        {props.measure.what}
        <Show when={props.measure.window} fallback={`, in ${props.measure.unit}.`}>
          {(window) => (
            <>
              . Window {window()} {props.measure.unit}.
            </>
          )}
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
          <Show when={wait().over !== null} fallback={`Next begins the wait: ${wait().minutes} min.`}>
            <Show when={left() > 0} fallback="The wait is over.">
              Wait {Math.floor(left() / 60)}:{String(left() % 60).padStart(2, '0')}
            </Show>
          </Show>
        </p>
      )}
    </Show>
  );
}
