import { For, Show, createMemo, createSignal, onMount, type JSX } from 'solid-js';
import { headGroups } from '../../record/head.ts';
import { rootOf } from '../../record/merkle.ts';
import { recordSheet, type Fact, type RecordSheet } from '../../record/record-sheet.ts';
import type { SessionRecord } from '../../record/session-record.ts';
import { now } from '../clock.ts';
import { Openings, Points, Preparation, Signatures, Steps, Times, Tools } from './sheet-sections.tsx';
import { TorqueTables } from './torque-tables.tsx';
import './record-sheet.css';

/** The papers that a sheet is laid out for. */
const PAPERS = { a4: 'A4', letter: 'Letter' } as const;
type Paper = keyof typeof PAPERS;

/** The record sheet of a session, to be printed and signed. Black on white, whatever the theme: it is paper. */
export function RecordSheetView(props: {
  readonly record: SessionRecord;
  /** Thumbprint of the key of its seal; null where it has none. */
  readonly thumbprint: string | null;
  readonly onLeave: () => void;
}): JSX.Element {
  const [paper, setPaper] = createSignal<Paper>('a4');
  const sheet = createMemo(() =>
    recordSheet(props.record, {
      timeZone: Intl.DateTimeFormat().resolvedOptions().timeZone,
      made: now().utc,
      root: rootOf(props.record.entries),
      thumbprint: props.thumbprint,
    }),
  );
  onMount(() => window.scrollTo(0, 0));
  return (
    <main class="sheet-screen">
      <nav class="sheet-tools" aria-label="Record sheet">
        <button type="button" onClick={() => props.onLeave()}>
          Back to the replay
        </button>
        <label>
          Paper{' '}
          <select
            value={paper()}
            onChange={(event) => setPaper(event.currentTarget.value === 'letter' ? 'letter' : 'a4')}
          >
            <For each={Object.entries(PAPERS)}>{([id, name]) => <option value={id}>{name}</option>}</For>
          </select>
        </label>
        <button type="button" onClick={() => window.print()}>
          Print, or save as PDF
        </button>
      </nav>
      <Sheet sheet={sheet()} paper={paper()} />
    </main>
  );
}

function Sheet(props: { readonly sheet: RecordSheet; readonly paper: Paper }): JSX.Element {
  const sheet = () => props.sheet;
  return (
    <article class={`record-sheet ${props.paper}`}>
      <h1>Record sheet: {sheet().title}</h1>
      <p class="caution">
        This sheet says what was recorded. It is not the manual and no release to service: the approved manual, local
        rules and licensed people decide.
        <Show when={sheet().isInvented}>
          {' '}
          <b>All values of this procedure are invented, for demonstration.</b>
        </Show>
      </p>
      <p class={sheet().isIntact ? 'standing' : 'standing broken'}>
        {sheet().verification}{' '}
        {sheet().isClosed ? 'The work was closed.' : 'THE WORK WAS NOT CLOSED when the record ended.'}
      </p>
      <div class="two">
        <Facts title="Approved data" facts={sheet().approvedData} />
        <Facts title="Component" facts={sheet().component} />
      </div>
      <Lines title="Parts" lines={sheet().parts} none="The procedure names none." />
      <Times sheet={sheet()} />
      <Preparation sheet={sheet()} />
      <Tools sheet={sheet()} />
      <Steps sheet={sheet()} />
      <TorqueTables tables={sheet().tables} />
      <Lines title="Weights held" lines={sheet().holds} none="None is recorded." />
      <Lines title="Observed values" lines={sheet().values} none="None is recorded." />
      <Lines
        title="Deviations, and what was left open"
        lines={sheet().openPoints}
        none="None was reported, and nothing is left open."
      />
      <Openings sheet={sheet()} />
      <Points sheet={sheet()} />
      <section>
        <h2>Hashes</h2>
        <dl class="facts hashes">
          <For each={sheet().hashes}>
            {([name, value]) => (
              <>
                <dt>{name}</dt>
                <dd>{/^[0-9a-f]{64}$/.test(value) ? headGroups(value).join(' ') : value}</dd>
              </>
            )}
          </For>
        </dl>
      </section>
      <Signatures recorded={sheet().signatures} />
      <p class="made">
        Sheet made {sheet().made.utc} ({sheet().made.local}). Local times are those of the zone of the device that made
        it; the record itself keeps UTC.
      </p>
    </article>
  );
}

function Facts(props: { readonly title: string; readonly facts: readonly Fact[] }): JSX.Element {
  return (
    <section>
      <h2>{props.title}</h2>
      <dl class="facts">
        <For each={props.facts}>
          {([name, value]) => (
            <>
              <dt>{name}</dt>
              <dd>{value}</dd>
            </>
          )}
        </For>
        <Show when={props.title === 'Component'}>
          <dt>Serial number</dt>
          <dd class="blank">&nbsp;</dd>
        </Show>
      </dl>
    </section>
  );
}

function Lines(props: {
  readonly title: string;
  readonly lines: readonly string[];
  readonly none: string;
}): JSX.Element {
  return (
    <section>
      <h2>{props.title}</h2>
      <ul>
        <For each={props.lines} fallback={<li>{props.none}</li>}>
          {(line) => <li>{line}</li>}
        </For>
      </ul>
    </section>
  );
}
