/** What is asked before the work goes on: after a break, at a handover, of a deviation, of the second person. */
import { For, Show, type JSX } from 'solid-js';
import type { Step } from '../../procedure/procedure.ts';
import type { WorkView } from '../view.ts';
import { Hazards, size } from './words.tsx';

export function AfterBreak(props: { readonly length: string }): JSX.Element {
  return (
    <>
      <p class="sentence medium">Work was broken off for {props.length}. Is all as it was left?</p>
      <p class="note">Affirm: the work goes on. Negative: it stands by.</p>
    </>
  );
}

export function HandingOver(props: { readonly from: string }): JSX.Element {
  return (
    <>
      <p class="sentence medium">{props.from} hands over.</p>
      <p class="note">Who takes over types a name below. To go on as before, say continue.</p>
    </>
  );
}

export function DeviationAsked(props: { readonly deviation: NonNullable<WorkView['deviation']> }): JSX.Element {
  return (
    <div class="call to-confirm out">
      <p class="question">{props.deviation.what}</p>
      <Show when={props.deviation.reason} fallback={<p class="sentence middling">Say why, or type it.</p>}>
        {(reason) => (
          <>
            <p class="sentence middling">“{reason()}”</p>
            <p class="question">Is that correct? Affirm or negative.</p>
          </>
        )}
      </Show>
    </div>
  );
}

export function StepWitness(props: {
  readonly what: string;
  readonly second: string | null;
  readonly objected: boolean;
  /** An inspector is wanted, who gives a name. */
  readonly byName: boolean;
}): JSX.Element {
  return (
    <div class="call to-confirm in">
      <p class="question">{props.byName ? 'Inspector' : (props.second ?? 'Second person')}, look at this:</p>
      <p class="sentence medium">{props.what}</p>
      <Show when={props.objected}>
        <p class="verdict">The second person did not agree. Put it right. To read the last pass again, say back.</p>
      </Show>
      <p class="question">
        {props.byName ? 'Type your name and tap what you found.' : 'Say witness affirm or witness negative.'}
      </p>
      <Show when={props.second === null && !props.byName}>
        <p class="note">Nobody is named as second person. One joins below; the mechanic cannot witness.</p>
      </Show>
    </div>
  );
}

/** One point of a step: the question large, and what the step asks for as a whole under it. */
export function PointAsked(props: {
  readonly point: NonNullable<WorkView['point']>;
  readonly step: Step;
}): JSX.Element {
  return (
    <div class="point">
      <Hazards hazards={props.step.hazards} />
      <p class={`sentence ${size(props.point.question)}`}>{props.point.question}</p>
      <Show when={props.point.left > 1}>
        <p class="note">Then {props.point.left - 1} more of this step, one by one.</p>
      </Show>
      <p class="note">{props.step.text}</p>
      <For each={props.step.notes}>{(note) => <p class="note">Note: {note}</p>}</For>
    </div>
  );
}

/** What is to be decided about after the work: always in sight, last. */
export function OpenPoints(props: { readonly points: readonly string[] }): JSX.Element {
  return (
    <Show when={props.points.length > 0}>
      <div class="open-points">
        <p>
          <b>To be decided about</b>
        </p>
        <ul>
          <For each={props.points}>{(point) => <li>{point}</li>}</For>
        </ul>
      </div>
    </Show>
  );
}
