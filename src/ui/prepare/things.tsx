/** What the work is done with: tools, adapters, consumables. */
import { createMemo, For, Show, type JSX } from 'solid-js';
import type { Tool } from '../../procedure/procedure.ts';
import { settingChanges } from '../../session/preparation/adapters.ts';
import { asFound } from '../../session/preparation/assess.ts';
import { adaptersIn, expiringIn, toolsIn, type NamedAdapter } from '../../session/preparation/needed.ts';
import { shown, usesOf } from '../../session/preparation/tools.ts';
import { typedQuantity } from '../../session/preparation/typed.ts';
import { convert, toWritten, type Kind, type Quantity } from '../../units/index.ts';
import { preparePage } from '../../words/prepare-page.ts';
import { Entry, Findings, Section } from './field.tsx';
import { withKey, type Sheet } from './sheet.ts';

/** Lists of the same ids are the same: a row that is typed in is not made anew. */
const SAME = {
  equals: (one: readonly string[], other: readonly string[]): boolean => one.join('\n') === other.join('\n'),
};

export function ToolsSection(props: { readonly sheet: Sheet }): JSX.Element {
  const found = createMemo(() => asFound(props.sheet.procedure, props.sheet.entered));
  const ids = createMemo(() => toolsIn(props.sheet.procedure, props.sheet.steps).map(({ id }) => id), [], SAME);
  return (
    <Show when={ids().length > 0}>
      <Section name="tools" title={preparePage.tools.title}>
        <For each={props.sheet.procedure.tools.filter(({ id }) => ids().includes(id))}>
          {(tool) => (
            <div class="thing">
              <h3>{tool.name}</h3>
              <p>{factsOf(tool)}</p>
              <Show when={usesOf(found(), props.sheet.steps, tool)[0]}>
                <p class="uses">
                  {preparePage.tools.uses(
                    usesOf(found(), props.sheet.steps, tool).map(({ pass, step, atWrench }) => ({
                      pass: pass.index,
                      step: step.title,
                      isLeast: step.runDown !== undefined,
                      value: shown(tenths(convert(atWrench.target, tool.range.max.unit))),
                    })),
                  )}
                </p>
              </Show>
              <Entry
                field={`tool/${tool.id}`}
                kind="day"
                label={preparePage.tools.calibrationDue(tool.id)}
                value={props.sheet.entered.calibrations.get(tool.id) ?? ''}
                onValue={(day) =>
                  props.sheet.change({ calibrations: withKey(props.sheet.entered.calibrations, tool.id, day) })
                }
              />
              <Findings field={`tool/${tool.id}`} all={props.sheet.findings} />
            </div>
          )}
        </For>
      </Section>
    </Show>
  );
}

const tenths = <T extends { readonly value: number }>(quantity: T): T => ({
  ...quantity,
  value: Number(quantity.value.toFixed(1)),
});

const factsOf = (tool: Tool): string =>
  preparePage.tools.facts({
    id: tool.id,
    type: preparePage.tools.types[tool.type],
    from: plain(tool.range.min),
    to: plain(tool.range.max),
    class: tool.class,
    maximumError: tool.maximumError,
    calibrationDue: tool.calibrationDue,
  });

const plain = <K extends Kind>(quantity: Quantity<K>): string => {
  const { value, unit } = toWritten(quantity);
  return `${value} ${unit}`;
};

export function AdaptersSection(props: { readonly sheet: Sheet }): JSX.Element {
  const ids = createMemo(() => adaptersIn(props.sheet.procedure, props.sheet.steps).map(({ id }) => id), [], SAME);
  return (
    <Show when={ids().length > 0}>
      <Section name="adapters" title={preparePage.adapters.title}>
        <For each={props.sheet.procedure.adapters.filter(({ id }) => ids().includes(id))}>
          {(adapter) => (
            <div class="thing">
              <h3>{adapter.name}</h3>
              <p>{preparePage.adapters.byFile(plain(adapter.length), adapter.angle.value)}</p>
              <Entry
                field={`adapter/${adapter.id}`}
                kind="decimal"
                label={preparePage.adapters.measured}
                unit={adapter.length.unit}
                value={props.sheet.entered.adapters.get(adapter.id) ?? ''}
                onValue={(text) =>
                  props.sheet.change({ adapters: withKey(props.sheet.entered.adapters, adapter.id, text) })
                }
              />
              <p class="uses">{settingsOf(props.sheet, adapter)}</p>
              <Findings field={`adapter/${adapter.id}`} all={props.sheet.findings} />
            </div>
          )}
        </For>
      </Section>
    </Show>
  );
}

function settingsOf({ procedure, steps, entered }: Sheet, { id, length }: NamedAdapter): string {
  const typed = typedQuantity('length', entered.adapters.get(id) ?? '', length.unit);
  const isMeasured = typed.kind === 'value';
  const changes = settingChanges(procedure, steps, id, isMeasured ? typed.value : length);
  const settings = changes.map(({ place, measured }) => `${place} ${measured}`);
  const withDrag = steps.some((step) => step.kind === 'tighten' && step.adapter === id && step.runDown !== undefined);
  return preparePage.adapters.settings(isMeasured, withDrag, settings);
}

export function ConsumablesSection(props: { readonly sheet: Sheet }): JSX.Element {
  const plainOnes = (): readonly string[] =>
    props.sheet.procedure.consumables.filter(({ expires }) => !expires).map(({ name }) => name);
  return (
    <Show when={props.sheet.procedure.consumables.length > 0}>
      <Section name="consumables" title={preparePage.consumables.title}>
        <Show when={plainOnes().length > 0}>
          <p>{preparePage.consumables.haveReady(plainOnes())}</p>
        </Show>
        <For each={expiringIn(props.sheet.procedure)}>
          {({ id, name }) => (
            <div class="thing">
              <Entry
                field={`consumable/${id}`}
                kind="day"
                label={preparePage.consumables.useBy(name)}
                value={props.sheet.entered.expiries.get(id) ?? ''}
                onValue={(day) => props.sheet.change({ expiries: withKey(props.sheet.entered.expiries, id, day) })}
              />
              <Findings field={`consumable/${id}`} all={props.sheet.findings} />
            </div>
          )}
        </For>
      </Section>
    </Show>
  );
}
