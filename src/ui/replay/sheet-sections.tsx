/** The sections of a record sheet that are tables, but for the torque tables. */
import { For, Show, type JSX } from 'solid-js';
import type { RecordSheet } from '../../record/record-sheet.ts';
import { sheetPage } from '../../words/sheet-page.ts';
import { Row, Table } from './table.tsx';

export function Times(props: { readonly sheet: RecordSheet }): JSX.Element {
  return (
    <section>
      <h2>{sheetPage.people.title}</h2>
      <Table heads={[sheetPage.people.who, sheetPage.people.from, sheetPage.people.to]}>
        <Row cells={[sheetPage.people.work, both(props.sheet.opened), both(props.sheet.ended)]} />
        <For each={props.sheet.people}>
          {({ name, role, from, to }) => (
            <Row cells={[sheetPage.people.inRole(name, role), both(from), to ? both(to) : sheetPage.people.toTheEnd]} />
          )}
        </For>
        <For each={props.sheet.interruptions}>
          {({ what, from, to }) => (
            <Row cells={[sheetPage.people.interrupted(what), both(from), to ? both(to) : sheetPage.people.notGoneOn]} />
          )}
        </For>
      </Table>
      <Show when={props.sheet.sound}>{(sentence) => <p>{sentence()}</p>}</Show>
    </section>
  );
}

const both = (time: RecordSheet['opened']): string => (time ? sheetPage.times(time.utc, time.local) : sheetPage.noTime);

export function Tools(props: { readonly sheet: RecordSheet }): JSX.Element {
  const words = sheetPage.tools;
  return (
    <section>
      <h2>{words.title}</h2>
      <Table heads={[words.tool, words.range, words.accuracy, words.due, words.used]}>
        <For each={props.sheet.tools}>
          {({ name, id, range, accuracy, calibrationDue, used }) => (
            <Row cells={[words.named(name, id), range, accuracy, calibrationDue, used]} />
          )}
        </For>
      </Table>
    </section>
  );
}

export function Preparation(props: { readonly sheet: RecordSheet }): JSX.Element {
  return (
    <section>
      <h2>{sheetPage.preparation.title}</h2>
      <Show when={props.sheet.preparation.length > 0} fallback={<p>{sheetPage.preparation.none}</p>}>
        <Table heads={[sheetPage.preparation.what, sheetPage.by, sheetPage.when]}>
          <For each={props.sheet.preparation}>
            {({ what, isWarning, by, at }) => <Row cells={[isWarning ? <b>{what}</b> : what, by]} at={at.utc} />}
          </For>
        </Table>
      </Show>
    </section>
  );
}

export function Steps(props: { readonly sheet: RecordSheet }): JSX.Element {
  const words = sheetPage.steps;
  return (
    <section>
      <h2>{words.title}</h2>
      <Show when={props.sheet.conditions.length > 0}>
        <p>{props.sheet.conditions.join(' ')}</p>
      </Show>
      <Table heads={[words.step, words.name, words.standing, sheetPage.by, sheetPage.when]}>
        <For each={props.sheet.steps}>
          {({ number, title, state, by, at }) => (
            <Row cells={[number, title, state.join('; '), by]} at={at?.utc ?? ''} />
          )}
        </For>
      </Table>
    </section>
  );
}

export function Openings(props: { readonly sheet: RecordSheet }): JSX.Element {
  const words = sheetPage.openings;
  return (
    <section>
      <h2>{words.title}</h2>
      <Show when={props.sheet.openings.length > 0} fallback={<p>{sheetPage.namesNone}</p>}>
        <Table heads={[words.opening, words.closure, words.opened, words.closed]}>
          <For each={props.sheet.openings}>
            {({ name, closure, opened, closed }) => <Row cells={[name, closure, opened, closed]} />}
          </For>
        </Table>
      </Show>
      <p>{words.notCounted}</p>
    </section>
  );
}

export function Points(props: { readonly sheet: RecordSheet }): JSX.Element {
  return (
    <Show when={props.sheet.points.length > 0}>
      <section>
        <h2>{sheetPage.points.title}</h2>
        <Table class="points" heads={[sheetPage.points.step, sheetPage.points.what, sheetPage.by, sheetPage.when]}>
          <For each={props.sheet.points}>
            {({ step, what, by, at }) => <Row cells={[step, what, by]} at={at.utc} />}
          </For>
        </Table>
      </section>
    </Show>
  );
}

const SIGNERS = ['work', 'second', 'inspector'] as const;

export function Signatures(props: { readonly recorded: readonly string[] }): JSX.Element {
  const words = sheetPage.signatures;
  return (
    <section class="signatures">
      <h2>{words.title}</h2>
      <ul>
        <For each={props.recorded}>{(line) => <li>{line}</li>}</For>
      </ul>
      <Table heads={[words.for, words.name, words.licence, words.date, words.signature]}>
        <For each={SIGNERS}>
          {(signer) => (
            <tr>
              <th scope="row">{words.signers[signer]}</th>
              <td />
              <td />
              <td />
              <td />
            </tr>
          )}
        </For>
      </Table>
    </section>
  );
}
