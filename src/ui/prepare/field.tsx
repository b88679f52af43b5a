/** Parts of the page before the work: a section, what is found about a field, rows to tap with a glove. */
import { createMemo, For, Show, type JSX } from 'solid-js';
import type { Field, Finding } from '../../session/preparation/finding.ts';
import { preparePage } from '../../words/prepare-page.ts';

/** The id of the element that a finding leads to. An id of a procedure may not be one of a page. */
export const idOf = (field: Field): string => `field-${field.replace(/[^a-z0-9]+/gi, '-')}`;
const notesOf = (field: Field): string => `${idOf(field)}-notes`;

export function Section(props: {
  readonly name: string;
  readonly title: string;
  readonly children: JSX.Element;
}): JSX.Element {
  return (
    <section aria-labelledby={`prepare-${props.name}`}>
      <h2 id={`prepare-${props.name}`}>{props.title}</h2>
      {props.children}
    </section>
  );
}

export const SIGNS = { stops: '▲', warns: '△' } as const;

/**
 * What is found about a field. Its place is never given back: what was found once holds it, so that nothing moves under a
 * finger when it is put right.
 */
export function Findings(props: { readonly field: Field; readonly all: readonly Finding[] }): JSX.Element {
  const here = createMemo(() => props.all.filter(({ field }) => field === props.field));
  const held = createMemo<readonly Finding[]>((before) => (lengthOf(here()) > lengthOf(before) ? here() : before), []);
  return (
    <div class="findings">
      <div class="held" aria-hidden="true">
        <Lines findings={held()} />
      </div>
      <div id={notesOf(props.field)}>
        <Lines findings={here()} />
      </div>
    </div>
  );
}

const lengthOf = (findings: readonly Finding[]): number =>
  findings.reduce((sum, { sentence }) => sum + sentence.length, 0);

function Lines(props: { readonly findings: readonly Finding[] }): JSX.Element {
  return (
    <For each={props.findings}>
      {({ sentence, stops }) => (
        <p class={stops ? 'stops' : 'warns'}>
          <span aria-hidden="true">{stops ? SIGNS.stops : SIGNS.warns}</span>{' '}
          <span class="said-only">{stops ? preparePage.stops : preparePage.warns}</span> {sentence}
        </p>
      )}
    </For>
  );
}

/** A line to type in, with its unit and what is found about it. */
export function Entry(props: {
  readonly field: Field;
  readonly label: string;
  readonly kind: 'day' | 'decimal' | 'name';
  readonly value: string;
  readonly unit?: string;
  readonly onValue: (text: string) => void;
}): JSX.Element {
  return (
    <label class="entry">
      <span>{props.label}</span>
      <span class="with-unit">
        <input
          id={props.kind === 'name' ? undefined : idOf(props.field)}
          type={props.kind === 'day' ? 'date' : 'text'}
          inputmode={props.kind === 'decimal' ? 'decimal' : undefined}
          autocomplete="off"
          value={props.value}
          aria-describedby={notesOf(props.field)}
          onInput={(event) => props.onValue(event.currentTarget.value)}
        />
        <Show when={props.unit}>{(unit) => <span>{unit()}</span>}</Show>
      </span>
    </label>
  );
}

/** A row to tap. */
export function Tick(props: {
  readonly id?: string;
  readonly isOn: boolean;
  readonly describedBy?: Field;
  readonly onChange: (isOn: boolean) => void;
  readonly children: JSX.Element;
}): JSX.Element {
  return (
    <label class="tap">
      <input
        id={props.id}
        type="checkbox"
        checked={props.isOn}
        aria-describedby={props.describedBy === undefined ? undefined : notesOf(props.describedBy)}
        onChange={(event) => props.onChange(event.currentTarget.checked)}
      />
      <span>{props.children}</span>
    </label>
  );
}

/** One out of a few, each a row to tap. */
export function Choice<Value extends string>(props: {
  readonly name: string;
  readonly legend: string;
  readonly id?: string;
  readonly options: readonly { readonly value: Value; readonly words: string }[];
  readonly chosen: Value | null;
  readonly onChoose: (value: Value) => void;
}): JSX.Element {
  return (
    <fieldset class="choice" id={props.id} tabindex={props.id === undefined ? undefined : -1}>
      <legend>{props.legend}</legend>
      <For each={props.options}>
        {({ value, words }) => (
          <label class="tap">
            <input
              type="radio"
              name={props.name}
              value={value}
              checked={props.chosen === value}
              onChange={() => props.onChoose(value)}
            />
            <span>{words}</span>
          </label>
        )}
      </For>
    </fieldset>
  );
}
