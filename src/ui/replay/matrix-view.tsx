import { createMemo, createSignal, For, onCleanup, onMount, Show, type JSX } from 'solid-js';
import { historyOf } from '../../record/reading-history.ts';
import { readingMatrices, type MatrixCell, type ReadingMatrix } from '../../record/reading-matrix.ts';
import { windowText } from '../../record/reading-window.ts';
import { stateAfter, type SessionRecord } from '../../record/session-record.ts';
import type { Reading } from '../../session/reading.ts';
import { matrix } from '../../words/matrix.ts';
import { Table } from './table.tsx';

/** More cells than this are only drawn when they are asked for. */
const FEW = 400;

/** What stands at the end of each fastener in each pass. A value leads to the event that wrote it. */
export function MatrixView(props: {
  readonly record: SessionRecord;
  readonly onGo: (seq: number) => void;
}): JSX.Element {
  // A long record is folded to its end after the screen is up.
  const [isUp, setUp] = createSignal(false);
  onMount(() => {
    const timer = setTimeout(() => setUp(true));
    onCleanup(() => clearTimeout(timer));
  });
  return (
    <section class="matrices" aria-labelledby="matrices">
      <h2 id="matrices">{matrix.title}</h2>
      <Show when={isUp()}>
        <Matrices {...props} />
      </Show>
    </section>
  );
}

function Matrices(props: { readonly record: SessionRecord; readonly onGo: (seq: number) => void }): JSX.Element {
  const state = createMemo(() => stateAfter(props.record, props.record.entries.length));
  const matrices = createMemo(() => readingMatrices(state()));
  return (
    <For each={matrices()} fallback={<p>{matrix.none}</p>}>
      {(each) => <Matrix {...props} matrix={each} readings={state().readings} />}
    </For>
  );
}

interface MatrixProps {
  readonly record: SessionRecord;
  readonly onGo: (seq: number) => void;
  readonly matrix: ReadingMatrix;
  readonly readings: readonly Reading[];
}

function Matrix(props: MatrixProps): JSX.Element {
  const isSmall = () => props.matrix.rows.length * props.matrix.passes.length <= FEW;
  const [isOpen, setOpen] = createSignal(isSmall());
  return (
    <details open={isSmall()} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        {matrix.summary(props.matrix.title, props.matrix.rows.length, props.matrix.label, props.matrix.passes.length)}
      </summary>
      <Show when={isOpen()}>
        <div class="wide">
          <Table
            class="matrix"
            heads={[
              props.matrix.label,
              ...props.matrix.passes.map(({ index, name }) => (index === 0 ? name : matrix.pass(index, name))),
            ]}
          >
            <For each={props.matrix.rows}>
              {({ fastener, cells }) => (
                <tr>
                  <th scope="row">{fastener}</th>
                  <For each={cells}>{(cell) => <Cell {...props} cell={cell} />}</For>
                </tr>
              )}
            </For>
          </Table>
        </div>
      </Show>
    </details>
  );
}

function Cell(props: MatrixProps & { readonly cell: MatrixCell }): JSX.Element {
  const read = () => (props.cell?.kind === 'read' ? props.cell.reading : null);
  const isLeftOpen = () => props.cell?.kind === 'read' && props.cell.isLeftOpen;
  const without = (): string =>
    props.cell === null || props.cell.kind === 'read' ? matrix.notInPass : matrix.withoutReading[props.cell.kind];
  return (
    <Show when={read()} fallback={<td class={(props.cell?.kind ?? 'none').replace(' ', '-')}>{without()}</td>}>
      {(reading) => (
        <td class={reading().verdict === 'in' && !isLeftOpen() ? 'in' : 'outside'}>
          <button type="button" onClick={() => props.onGo(reading().seq)} title={matrix.toEntry(reading().seq)}>
            <span class="said-only">{matrix.fastener(props.matrix.label, reading().fastener)}</span>
            <For each={earlier(props.readings, reading())}>{(value) => <s>{value}</s>}</For>
            <b>{matrix.value(reading().reading.value, reading().reading.unit)}</b>
            <span>{matrix.verdicts[reading().verdict]}</span>
            <Show when={isLeftOpen()}>
              <span>{matrix.withoutReading['left open']}</span>
            </Show>
            <small>
              {limitsAndPerson(reading(), props.record)}
              <Show when={reading().witnessed}>
                {(witnessed) => <>{matrix.witness(witnessed().person, witnessed().reading.value)}</>}
              </Show>
            </small>
          </button>
        </td>
      )}
    </Show>
  );
}

/** The values that were read before the one that stands. */
const earlier = (readings: readonly Reading[], standing: Reading): readonly string[] =>
  historyOf(readings, standing)
    .filter(({ seq }) => seq < standing.seq)
    .map(({ reading }) => reading.value);

const limitsAndPerson = ({ basis, person }: Reading, { procedure }: SessionRecord): string =>
  basis.of === 'torque' ? matrix.windowAndPerson(windowText(basis, procedure), person) : person;
