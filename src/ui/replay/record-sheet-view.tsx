import { For, Show, createMemo, createSignal, onMount, type JSX } from 'solid-js';
import { headGroups } from '../../record/head.ts';
import { rootOf } from '../../record/merkle.ts';
import { recordSheet, type Fact, type RecordSheet } from '../../record/record-sheet.ts';
import type { SessionRecord } from '../../record/session-record.ts';
import { sheetPage } from '../../words/sheet-page.ts';
import { now } from '../clock.ts';
import { Openings, Points, Preparation, Signatures, Steps, Times, Tools } from './sheet-sections.tsx';
import { TorqueTables } from './torque-tables.tsx';
import './record-sheet.css';

/** The papers that a sheet is laid out for. */
const PAPERS = ['a4', 'letter'] as const;
type Paper = (typeof PAPERS)[number];

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
      <nav class="sheet-tools" aria-label={sheetPage.name}>
        <button type="button" onClick={() => props.onLeave()}>
          {sheetPage.back}
        </button>
        <label>
          {sheetPage.paper}{' '}
          <select
            value={paper()}
            onChange={(event) => setPaper(event.currentTarget.value === 'letter' ? 'letter' : 'a4')}
          >
            <For each={PAPERS}>{(each) => <option value={each}>{sheetPage.papers[each]}</option>}</For>
          </select>
        </label>
        <button type="button" onClick={() => window.print()}>
          {sheetPage.print}
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
      <h1>{sheetPage.title(sheet().title)}</h1>
      <p class="caution">
        {sheetPage.caution}
        <Show when={sheet().isInvented}>
          {' '}
          <b>{sheetPage.invented}</b>
        </Show>
      </p>
      <p class={sheet().isIntact ? 'standing' : 'standing broken'}>
        {sheet().verification} {sheet().isClosed ? sheetPage.closed : sheetPage.notClosed}
      </p>
      <div class="two">
        <Facts title={sheetPage.approvedData} facts={sheet().approvedData} />
        <Facts title={sheetPage.component} facts={sheet().component}>
          <dt>{sheetPage.serialNumber}</dt>
          <dd class="blank">&nbsp;</dd>
        </Facts>
      </div>
      <Lines title={sheetPage.parts} lines={sheet().parts} none={sheetPage.namesNone} />
      <Times sheet={sheet()} />
      <Preparation sheet={sheet()} />
      <Tools sheet={sheet()} />
      <Steps sheet={sheet()} />
      <TorqueTables tables={sheet().tables} />
      <Lines title={sheetPage.holds} lines={sheet().holds} none={sheetPage.noneRecorded} />
      <Lines title={sheetPage.values} lines={sheet().values} none={sheetPage.noneRecorded} />
      <Lines title={sheetPage.openPoints} lines={sheet().openPoints} none={sheetPage.noOpenPoints} />
      <Openings sheet={sheet()} />
      <Points sheet={sheet()} />
      <section>
        <h2>{sheetPage.hashes}</h2>
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
      <p class="made">{sheetPage.made(sheet().made.utc, sheet().made.local)}</p>
    </article>
  );
}

function Facts(props: {
  readonly title: string;
  readonly facts: readonly Fact[];
  /** What is filled in by hand. */
  readonly children?: JSX.Element;
}): JSX.Element {
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
        {props.children}
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
