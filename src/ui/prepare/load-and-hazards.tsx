/** What runs out, what is carried, and what can hurt. */
import { createMemo, For, Show, type JSX } from 'solid-js';
import { explainLift } from '../../language/explain.ts';
import { carriers, HANDLINGS, type Handling } from '../../lifting/index.ts';
import { capacityUnit, carryingOf, containerHere } from '../../session/preparation/load.ts';
import { hazardsIn } from '../../session/preparation/needed.ts';
import { typedQuantity } from '../../session/preparation/typed.ts';
import { preparePage } from '../../words/prepare-page.ts';
import { Choice, Entry, Findings, idOf, Section, Tick } from './field.tsx';
import type { Sheet } from './sheet.ts';
import { SignalWord } from '../parts/words.tsx';

export function ContainerSection(props: { readonly sheet: Sheet }): JSX.Element {
  const unit = () => capacityUnit(props.sheet.procedure);
  const check = () => {
    const known = unit();
    if (known === null) return null;
    const typed = typedQuantity('volume', props.sheet.entered.capacity, known);
    return typed.kind === 'wrong'
      ? null
      : containerHere(props.sheet.procedure, typed.kind === 'value' ? typed.value : null);
  };
  return (
    <Show when={(props.sheet.procedure.component.drains?.value ?? 0) > 0 && unit()}>
      {(known) => (
        <Section name="container" title={preparePage.container.title}>
          <p>{check()?.isEnough ? check()?.sentence : preparePage.container.mustHold}</p>
          <Entry
            field="container"
            kind="decimal"
            label={preparePage.container.capacity}
            unit={known()}
            value={props.sheet.entered.capacity}
            onValue={(capacity) => props.sheet.change({ capacity })}
          />
          <Findings field="container" all={props.sheet.findings} />
        </Section>
      )}
    </Show>
  );
}

export function LiftSection(props: { readonly sheet: Sheet }): JSX.Element {
  const carrying = createMemo(() => carryingOf(props.sheet.procedure));
  const words = createMemo(() => explainLift(props.sheet.procedure));
  const persons = () => props.sheet.procedure.lift?.persons;
  return (
    <Section name="lift" title={preparePage.lift.title}>
      <p>{words().facts.join(' ')}</p>
      <Show when={carrying().lift}>
        {(lift) => (
          <>
            {/* The others warn below, where it is carried by hand. */}
            <p class="note">{words().limits[0]}</p>
            <Choice
              name="handling"
              id={idOf('lift')}
              legend={preparePage.lift.carriedBy}
              options={HANDLINGS.map((value) => ({ value, words: handlingWords(value, lift().least, persons()) }))}
              chosen={props.sheet.entered.handling}
              onChoose={(handling) => props.sheet.change({ handling })}
            />
          </>
        )}
      </Show>
      <Findings field="lift" all={props.sheet.findings} />
    </Section>
  );
}

/** What the procedure says and what the lifting equation would have, each named by its source. */
function handlingWords(handling: Handling, least: Handling, persons: number | undefined): string {
  const { handlings, by, saidBy } = preparePage.lift;
  const sources = [
    ...(carriers(handling) === persons ? [by.procedure] : []),
    ...(handling === least ? [by.equation] : []),
  ];
  return sources.length === 0 ? handlings[handling] : saidBy(handlings[handling], sources);
}

export function HazardsSection(props: { readonly sheet: Sheet }): JSX.Element {
  const hazards = createMemo(() => hazardsIn(props.sheet.steps));
  const acknowledge = (key: string, isOn: boolean): void => {
    const after = new Set(props.sheet.entered.hazards);
    if (isOn) after.add(key);
    else after.delete(key);
    props.sheet.change({ hazards: after });
  };
  return (
    <Show when={hazards().length > 0}>
      <Section name="hazards" title={preparePage.hazards.title}>
        <p>{preparePage.hazards.askedAgain}</p>
        <div id={idOf('hazards')} tabindex="-1">
          <For each={hazards()}>
            {({ key, titles, ...hazard }) => (
              <div class="hazard-row">
                <Tick isOn={props.sheet.entered.hazards.has(key)} onChange={(isOn) => acknowledge(key, isOn)}>
                  <SignalWord hazard={hazard} /> {hazard.text} <span class="where">({titles.join(', ')})</span>
                </Tick>
              </div>
            )}
          </For>
        </div>
        <Findings field="hazards" all={props.sheet.findings} />
      </Section>
    </Show>
  );
}
