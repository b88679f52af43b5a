import { For, Show, type JSX } from 'solid-js';
import type { SheetValue, TorqueLine, TorqueTable } from '../../record/sheet/torque.ts';
import { sheetPage } from '../../words/sheet-page.ts';
import { Table } from './table.tsx';

/** The torque tables of a sheet: each value a row of its own, so that no row is cut by the end of a page. */
export function TorqueTables(props: { readonly tables: readonly TorqueTable[] }): JSX.Element {
  return (
    <For each={props.tables}>
      {(table) => (
        <section>
          <h2>{sheetPage.torque.title(table.title)}</h2>
          <p>{sheetPage.torque.heading(table.heading)}</p>
          <Table
            class="torque"
            heads={[
              table.label,
              sheetPage.torque.pass,
              sheetPage.torque.target,
              sheetPage.torque.window,
              sheetPage.torque.value,
              sheetPage.torque.verdict,
              sheetPage.torque.by,
              sheetPage.when,
              sheetPage.torque.entry,
            ]}
          >
            <For each={table.lines}>{(line) => <Line line={line} />}</For>
          </Table>
        </section>
      )}
    </For>
  );
}

/** A fastener in a pass: every value ever read, those that do not count struck through and still legible. */
function Line(props: { readonly line: TorqueLine }): JSX.Element {
  const hasStanding = () => props.line.values.some(({ counts }) => counts);
  return (
    <>
      <For each={props.line.values}>{(value) => <ValueRow line={props.line} value={value} />}</For>
      <Show when={!hasStanding()}>
        <tr>
          <Place line={props.line} />
          <td />
          <td>{props.line.verdict}</td>
          <td>{props.line.done?.by}</td>
          <td class="whole">{props.line.done?.at.utc}</td>
          <td>{props.line.done?.entry}</td>
        </tr>
      </Show>
    </>
  );
}

function ValueRow(props: { readonly line: TorqueLine; readonly value: SheetValue }): JSX.Element {
  return (
    <tr classList={{ earlier: !props.value.stands }}>
      <Place line={props.line} />
      <td>
        <Show when={props.value.counts} fallback={<s>{props.value.value}</s>}>
          <b>{props.value.value}</b>
        </Show>
        <For each={props.value.remarks}>{(remark) => <small> {remark}</small>}</For>
      </td>
      <td>{[props.value.verdict, ...(props.value.stands ? [] : [props.value.fate])].join('; ')}</td>
      <td>
        {props.value.by}
        <Show when={props.value.witness}>{(witness) => <>; {witness()}</>}</Show>
      </td>
      <td class="whole">{props.value.at.utc}</td>
      <td>{props.value.entry}</td>
    </tr>
  );
}

const Place = (props: { readonly line: TorqueLine }): JSX.Element => (
  <>
    <th scope="row">{props.line.fastener}</th>
    <td class="whole">{props.line.pass}</td>
    <td class="whole">{props.line.target}</td>
    <td>{props.line.window}</td>
  </>
);
