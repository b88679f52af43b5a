/** The fastener that is called, and the reading of it that waits for its word. */
import { For, Show, type JSX } from 'solid-js';
import type { Step } from '../../procedure/procedure.ts';
import { wantsOwnWord, type Reading } from '../../session/state.ts';
import { asked } from '../../words/asked.ts';
import { wanted } from '../../words/wanted.ts';
import type { CallView } from '../view/call.ts';
import { Hazards } from './words.tsx';

export function NextCall(props: { readonly call: CallView; readonly step: Step }): JSX.Element {
  return (
    <div class="call">
      <Hazards hazards={props.step.hazards} />
      <p class="fastener-number">
        <span class="label">{props.call.label}</span> {props.call.fastener}
      </p>
      <p class="pass">{props.call.round}</p>
      <Show when={props.call.outside}>
        {(outside) => (
          <p class="last-reading">
            {wanted.readBefore(outside().reading.value, outside().reading.unit, verdictText(outside()))}
          </p>
        )}
      </Show>
      <Show when={props.call.toDo}>
        {(toDo) => (
          <p class="trouble stops" role="alert">
            {toDo()}
          </p>
        )}
      </Show>
      <For each={props.call.troubles}>
        {({ text, stops }) => (
          <p class={`trouble ${stops ? 'stops' : ''}`} role={stops ? 'alert' : undefined}>
            {text}
          </p>
        )}
      </For>
      <Show when={!props.call.troubles.some(({ stops }) => stops)}>
        <WhatToReach call={props.call} />
      </Show>
      <Show when={props.call.plan}>{(plan) => <p class="note">{plan()}</p>}</Show>
      <p class="note">{props.step.text}</p>
    </div>
  );
}

/** The value, and under it its limits, how it came about, and the tool. */
function WhatToReach(props: { readonly call: CallView }): JSX.Element {
  return (
    <>
      <Show when={props.call.target} fallback={<p class="value instead">{props.call.instead}</p>}>
        {(target) => (
          <p class="value">
            {target().value} <span class="unit">{target().unit}</span>
          </p>
        )}
      </Show>
      <Show when={props.call.window}>
        {(window) => <p class="window">{wanted.window(window(), props.call.left)}</p>}
      </Show>
      <Show when={props.call.minimum}>
        {(minimum) => <p class="window">{wanted.minimum(minimum(), props.call.left)}</p>}
      </Show>
      <Show when={props.call.why}>{(why) => <p class="reckoning">{why()}</p>}</Show>
      <Show when={props.call.tool}>{(tool) => <p class="note">{tool()}</p>}</Show>
    </>
  );
}

function verdictText({ verdict, basis }: Reading): string {
  if (basis.of === 'torque') return wanted.verdict[verdict];
  if (verdict === 'in') return wanted.runningTorque;
  return verdict === 'over' ? wanted.tooMuchRunningTorque : wanted.verdict[verdict];
}

export function ToWitness(props: {
  readonly fastener: number;
  readonly label: string;
  readonly doubt: string | null;
}): JSX.Element {
  return (
    <div class="call to-confirm in">
      <p class="fastener-number">
        <span class="label">{props.label}</span> {props.fastener}
      </p>
      <p class="question">{props.doubt ?? wanted.secondReads}</p>
      <p class="note">{wanted.firstShownAfter}</p>
    </div>
  );
}

interface ToConfirmProps {
  readonly reading: Reading;
  readonly label: string;
  readonly doubt: string | null;
}

export function ToConfirm(props: ToConfirmProps): JSX.Element {
  return (
    <div class={`call to-confirm ${wantsOwnWord(props.reading) ? 'out' : 'in'}`}>
      <p class="fastener-number">
        <span class="label">{props.label}</span> {props.reading.fastener}
      </p>
      <p class="value">
        {props.reading.reading.value} <span class="unit">{props.reading.reading.unit}</span>
      </p>
      <Show when={props.reading.witnessed}>
        {(witnessed) => (
          <p class="verdict">
            {wanted.witnessRead(witnessed().person, witnessed().reading.value, witnessed().reading.unit)}
          </p>
        )}
      </Show>
      <p class="verdict">{verdictText(props.reading)}</p>
      <p class="question">{props.doubt ?? asked.isThatCorrect}</p>
    </div>
  );
}
