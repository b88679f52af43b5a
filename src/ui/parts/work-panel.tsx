import { For, Match, Show, Switch, type JSX } from 'solid-js';
import type { Hazard } from '../../procedure/procedure.ts';
import { Hazards, SignalWord, size } from './words.tsx';
import { wantsOwnWord, type Reading } from '../../session/state.ts';
import { asked } from '../../words/asked.ts';
import { wanted } from '../../words/wanted.ts';
import type { WorkView } from '../view.ts';
import type { CallView } from '../view/call.ts';
import { createFit } from './fit.ts';
import { Held, HelpCalled } from './held.tsx';
import { Measured } from './measured.tsx';
import { AfterBreak, DeviationAsked, HandingOver, OpenPoints, PointAsked, StepWitness } from './asked.tsx';
import { PatternPlan } from './pattern-map.tsx';

/** What is wanted now, large: the open warning, the reading to confirm, the next fastener, or the step. */
export function WorkPanel(props: {
  readonly view: WorkView;
  /** What is shown may still change by what is being said. */
  readonly isProvisional?: boolean;
}): JSX.Element {
  let around: HTMLDivElement | undefined;
  let box: HTMLDivElement | undefined;
  createFit(
    () => around,
    () => box,
    () => props.view,
  );
  return (
    <div class="work-panel" classList={{ provisional: props.isProvisional ?? false }}>
      <div ref={around} class="inner" classList={{ 'with-map': props.view.map !== null }}>
        {/* Where it is longer than the screen, keys scroll it. */}
        <div ref={box} class="wanted" tabindex="0" role="group" aria-label={wanted.whatIsWanted}>
          <Show
            when={props.view.step}
            fallback={<h1 class="sentence short">{props.view.closing ? wanted.beforeClosing : wanted.allDone}</h1>}
          >
            {(step) => (
              <>
                <h1 class="step-line">{wanted.stepOf(props.view.stepNumber, props.view.stepCount, step().title)}</h1>
                <Show when={props.view.openings}>{(line) => <p class="openings">{line()}</p>}</Show>
                <Show when={props.view.skipped.length > 0}>
                  <p class="skipped">{wanted.skipped(props.view.skipped)}</p>
                </Show>
                <Show when={props.view.phase === 'standing by' && !props.view.handingOver}>
                  <p class="standing-by">{wanted.standingBy}</p>
                </Show>
                <Show when={props.view.help}>{(help) => <HelpCalled help={help()} />}</Show>
                <Switch fallback={<StepText view={props.view} />}>
                  <Match when={props.view.held}>{(held) => <Held held={held()} />}</Match>
                  <Match when={props.view.handingOver}>
                    <HandingOver from={props.view.people.mechanic} />
                  </Match>
                  <Match when={props.view.breakOf}>{(length) => <AfterBreak length={length()} />}</Match>
                  <Match when={props.view.deviation}>{(deviation) => <DeviationAsked deviation={deviation()} />}</Match>
                  <Match when={props.view.warning}>{(warning) => <OpenWarning hazard={warning()} />}</Match>
                  <Match when={props.view.awaitsWitness}>
                    {(fastener) => <ToWitness fastener={fastener()} label={props.view.call?.label ?? wanted.number} />}
                  </Match>
                  <Match when={props.view.pending}>
                    {(pending) => (
                      <ToConfirm
                        reading={pending()}
                        label={props.view.call?.label ?? wanted.number}
                        doubt={props.view.doubt}
                      />
                    )}
                  </Match>
                  <Match when={props.view.toWitness}>
                    {(what) => (
                      <StepWitness
                        what={what()}
                        second={props.view.witness}
                        objected={props.view.objected}
                        byName={props.view.wantsInspector}
                      />
                    )}
                  </Match>
                  <Match when={props.view.question}>{(question) => <OpenQuestion question={question()} />}</Match>
                  <Match when={props.view.point}>{(point) => <PointAsked point={point()} step={step()} />}</Match>
                  <Match when={props.view.call}>{(call) => <NextCall call={call()} hazards={step().hazards} />}</Match>
                </Switch>
              </>
            )}
          </Show>
          <OpenPoints points={props.view.openPoints} />
        </div>
        <Show when={props.view.map}>{(map) => <PatternPlan map={map()} />}</Show>
      </div>
    </div>
  );
}

function StepText(props: { readonly view: WorkView }): JSX.Element {
  const step = () => props.view.step;
  return (
    <Show when={step()}>
      {(shown) => (
        <>
          <Hazards hazards={shown().hazards} />
          <p class={`sentence ${size(shown().text)}`}>{shown().text}</p>
          <For each={shown().notes}>{(note) => <p class="note">{asked.note(note)}</p>}</For>
          <Outcomes view={props.view} />
          <Show when={props.view.measure}>{(measure) => <Measured measure={measure()} />}</Show>
          <Show when={props.view.awaitsHold}>
            <p class="question">{wanted.sayHeld}</p>
          </Show>
          <Show when={props.view.load.length > 0}>
            <p class="note">{props.view.load.join(' ')}</p>
          </Show>
        </>
      )}
    </Show>
  );
}

function Outcomes(props: { readonly view: WorkView }): JSX.Element {
  const outcomes = () => (props.view.step?.kind === 'check' ? props.view.step.outcomes : []);
  return (
    <ul class="outcomes">
      <For each={outcomes()}>
        {(outcome) => (
          <li>
            <b>{(outcome.say ?? [outcome.id])[0]}</b>: {outcome.text}
          </li>
        )}
      </For>
    </ul>
  );
}

function OpenQuestion(props: { readonly question: string }): JSX.Element {
  return (
    <>
      <p class={`sentence ${size(props.question)}`}>{props.question}</p>
      <p class="note">{wanted.skippedWhereNo}</p>
    </>
  );
}

function OpenWarning(props: { readonly hazard: Hazard }): JSX.Element {
  return (
    <div class={`hazard ${props.hazard.signal} open`} role="alert">
      <p>
        <SignalWord hazard={props.hazard} />
      </p>
      <p class={`sentence ${size(props.hazard.text)}`}>{props.hazard.text}</p>
    </div>
  );
}

function NextCall(props: { readonly call: CallView; readonly hazards: readonly Hazard[] }): JSX.Element {
  return (
    <div class="call">
      <Hazards hazards={props.hazards} />
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

function ToWitness(props: { readonly fastener: number; readonly label: string }): JSX.Element {
  return (
    <div class="call to-confirm in">
      <p class="fastener-number">
        <span class="label">{props.label}</span> {props.fastener}
      </p>
      <p class="question">{wanted.secondReads}</p>
      <p class="note">{wanted.firstShownAfter}</p>
    </div>
  );
}

interface ToConfirmProps {
  readonly reading: Reading;
  readonly label: string;
  readonly doubt: string | null;
}

function ToConfirm(props: ToConfirmProps): JSX.Element {
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
      <Show when={props.doubt}>{(doubt) => <p class="verdict">{doubt()}</p>}</Show>
      <p class="question">{asked.isThatCorrect}</p>
    </div>
  );
}
