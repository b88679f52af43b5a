import { createSignal, For, Match, Show, Switch, type JSX } from 'solid-js';
import type { Unheard } from '../../language/unheard.ts';
import type { Hazard } from '../../procedure/procedure.ts';
import { Hazards, SignalWord, size } from './words.tsx';
import { answers } from '../../words/answers.ts';
import { asked } from '../../words/asked.ts';
import { prompting } from '../../words/prompting.ts';
import { wanted } from '../../words/wanted.ts';
import type { WorkView } from '../view.ts';
import { Answer } from './answer.tsx';
import { NextCall, ToConfirm, ToWitness } from './called.tsx';
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
  /** What came in last would have gone past something that warns. */
  readonly unheard?: Unheard | undefined;
}): JSX.Element {
  let around: HTMLDivElement | undefined;
  let box: HTMLDivElement | undefined;
  const [putAway, setPutAway] = createSignal<WorkView['answer']>(null);
  const answer = () => (props.view.answer === putAway() ? null : props.view.answer);
  createFit(
    () => around,
    () => box,
    () => [props.view, answer()],
  );
  return (
    <div class="work-panel" classList={{ provisional: props.isProvisional ?? false }}>
      <div ref={around} class="inner" classList={{ 'in-two': answer() !== null || props.view.map !== null }}>
        {/* Where it is longer than the screen, keys scroll it. */}
        <div ref={box} class="wanted" tabindex="0" role="group" aria-label={wanted.whatIsWanted}>
          <Show
            when={props.view.step}
            fallback={<h1 class="sentence short">{props.view.closing ? wanted.beforeClosing : answers.allDone}</h1>}
          >
            {(step) => (
              <>
                <h1 class="step-line">{wanted.stepOf(props.view.stepNumber, props.view.stepCount, step().title)}</h1>
                <Show when={props.view.openings}>{(line) => <p class="openings">{line()}</p>}</Show>
                <Show when={props.view.skipped.length > 0}>
                  <p class="skipped">{wanted.skipped(props.view.skipped)}</p>
                </Show>
                <Show when={props.view.undone}>{(undone) => <p class="skipped">{undone()}</p>}</Show>
                <Show when={props.view.phase === 'standing by' && !props.view.handingOver}>
                  <p class="standing-by">{prompting.standingBy}</p>
                </Show>
                <Show when={props.view.help}>{(help) => <HelpCalled help={help()} />}</Show>
                <Show when={props.view.refused}>
                  {(why) => <p class="trouble refused">{wanted.notTaken(why())}</p>}
                </Show>
                <Show when={props.unheard}>
                  {(first) => <p class="trouble refused unheard">{wanted.unheard[first().how](first().signal)}</p>}
                </Show>
                <Switch fallback={<StepText view={props.view} />}>
                  <Match when={props.view.held}>{(held) => <Held held={held()} />}</Match>
                  <Match when={props.view.handingOver}>
                    <HandingOver from={props.view.people.mechanic} />
                  </Match>
                  <Match when={props.view.breakOf}>{(length) => <AfterBreak length={length()} />}</Match>
                  <Match when={props.view.deviation}>{(deviation) => <DeviationAsked deviation={deviation()} />}</Match>
                  <Match when={props.view.warning}>{(warning) => <OpenWarning hazard={warning()} />}</Match>
                  <Match when={props.view.awaitsWitness}>
                    {(fastener) => (
                      <ToWitness
                        fastener={fastener()}
                        label={props.view.call?.label ?? wanted.number}
                        doubt={props.view.doubt}
                      />
                    )}
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
                  <Match when={props.view.call}>{(call) => <NextCall call={call()} step={step()} />}</Match>
                </Switch>
              </>
            )}
          </Show>
          <OpenPoints points={props.view.openPoints} />
        </div>
        {/* What was asked is looked at instead of the plan; what is wanted keeps its place. */}
        <Show when={answer()} fallback={<Show when={props.view.map}>{(map) => <PatternPlan map={map()} />}</Show>}>
          {(sentences) => (
            <Answer
              sentences={sentences()}
              onPutAway={() => {
                setPutAway(sentences());
                box?.focus();
              }}
            />
          )}
        </Show>
      </div>
    </div>
  );
}

function StepText(props: { readonly view: WorkView }): JSX.Element {
  const step = () => props.view.step;
  const instead = () => props.view.ordered ?? props.view.mustReplace;
  const large = () => instead() ?? step()?.text ?? '';
  return (
    <Show when={step()}>
      {(shown) => (
        <>
          <Hazards hazards={shown().hazards} />
          <p class={`sentence ${size(large())}`}>{large()}</p>
          <Show when={instead()}>
            <p class="note">{shown().text}</p>
          </Show>
          <For each={shown().notes}>{(note) => <p class="note">{asked.note(note)}</p>}</For>
          <Outcomes view={props.view} />
          <Show when={props.view.measure}>{(measure) => <Measured measure={measure()} />}</Show>
          <Show when={props.view.awaitsHold}>
            <p class="question">{prompting.held}</p>
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
  const outcomes = () =>
    props.view.step?.kind === 'check'
      ? props.view.step.outcomes.filter(({ id }) => id !== 'reuse' || props.view.mustReplace === null)
      : [];
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
