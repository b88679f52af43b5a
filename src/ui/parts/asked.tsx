/** What is asked before the work goes on: after a break, at a handover, of a deviation, of the second person. */
import { For, Show, type JSX } from 'solid-js';
import type { Step } from '../../procedure/procedure.ts';
import { announcing } from '../../words/announcing.ts';
import { asked } from '../../words/asked.ts';
import type { WorkView } from '../view.ts';
import { Hazards, size } from './words.tsx';

export function AfterBreak(props: { readonly length: string }): JSX.Element {
  return (
    <>
      <p class="sentence medium">{asked.isAllAsLeft(props.length)}</p>
      <p class="note">{asked.affirmGoesOn}</p>
    </>
  );
}

export function HandingOver(props: { readonly from: string }): JSX.Element {
  return (
    <>
      <p class="sentence medium">{asked.handsOver(props.from)}</p>
      <p class="note">{asked.whoTakesOver}</p>
    </>
  );
}

export function DeviationAsked(props: { readonly deviation: NonNullable<WorkView['deviation']> }): JSX.Element {
  return (
    <div class="call to-confirm out">
      <p class="question">{props.deviation.what}</p>
      <Show when={props.deviation.reason} fallback={<p class="sentence middling">{asked.sayWhy}</p>}>
        {(reason) => (
          <>
            <p class="sentence middling">{asked.quoted(reason())}</p>
            <p class="question">{asked.isThatCorrect}</p>
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
      <p class="question">{asked.lookAtThis(props.byName ? asked.inspector : (props.second ?? asked.secondPerson))}</p>
      <p class="sentence medium">{props.what}</p>
      <Show when={props.objected}>
        <p class="verdict">{announcing.stepNotAgreed}</p>
      </Show>
      <p class="question">{props.byName ? asked.tapWhatYouFound : asked.sayWitness}</p>
      <Show when={props.second === null && !props.byName}>
        <p class="note">{asked.nobodyIsSecond}</p>
      </Show>
    </div>
  );
}

/** One point of a step: what the step asks for, and then the question, large. As it is spoken: nobody is asked of what is not done. */
export function PointAsked(props: {
  readonly point: NonNullable<WorkView['point']>;
  readonly step: Step;
}): JSX.Element {
  return (
    <div class="point">
      <Hazards hazards={props.step.hazards} />
      <Show when={props.point.work}>{(work) => <p class="work-first">{work()}</p>}</Show>
      <p class={`sentence ${size(props.point.question)}`}>{props.point.question}</p>
      <Show when={props.point.left > 1}>
        <p class="note">{asked.thenMore(props.point.left - 1)}</p>
      </Show>
      <For each={props.step.notes}>{(note) => <p class="note">{asked.note(note)}</p>}</For>
    </div>
  );
}

/** What is still to be decided about: always in sight, last. */
export function OpenPoints(props: { readonly points: readonly string[] }): JSX.Element {
  return (
    <Show when={props.points.length > 0}>
      <div class="open-points">
        <p>
          <b>{asked.toBeDecided}</b>
        </p>
        <ul>
          <For each={props.points}>{(point) => <li>{point}</li>}</For>
        </ul>
      </div>
    </Show>
  );
}
