import { For, Show, createResource, createSignal, onMount, type JSX } from 'solid-js';
import { headGroups } from '../../record/head.ts';
import { rootOf } from '../../record/merkle.ts';
import { recordSheet, type Fact, type RecordSheet } from '../../record/record-sheet.ts';
import type { SessionRecord } from '../../record/session-record.ts';
import { now } from '../clock.ts';
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
  const [sheet] = createResource(async () =>
    recordSheet(props.record, {
      timeZone: Intl.DateTimeFormat().resolvedOptions().timeZone,
      made: now().utc,
      root: await rootOf(props.record.entries),
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
        <button type="button" disabled={!sheet()} onClick={() => window.print()}>
          Print, or save as PDF
        </button>
      </nav>
      <Show when={sheet()} fallback={<p class="opening">Making the sheet…</p>}>
        {(made) => <Sheet sheet={made()} paper={paper()} />}
      </Show>
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
      <Tools sheet={sheet()} />
      <Steps sheet={sheet()} />
      <TorqueTables tables={sheet().tables} />
      <Lines
        title="Deviations, and what was left open"
        lines={sheet().openPoints}
        none="None was reported, and nothing is left open."
      />
      <Openings sheet={sheet()} />
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
      <Signatures />
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

function Times(props: { readonly sheet: RecordSheet }): JSX.Element {
  return (
    <section>
      <h2>People and times</h2>
      <table>
        <thead>
          <tr>
            <th scope="col">Who or what</th>
            <th scope="col">From (UTC; local)</th>
            <th scope="col">To (UTC; local)</th>
          </tr>
        </thead>
        <tbody>
          <tr>
            <td>Record</td>
            <td>{both(props.sheet.opened)}</td>
            <td>{both(props.sheet.ended)}</td>
          </tr>
          <For each={props.sheet.people}>
            {({ name, role, from, to }) => (
              <tr>
                <td>
                  {name}, {role}
                </td>
                <td>{both(from)}</td>
                <td>{to ? both(to) : 'to the end'}</td>
              </tr>
            )}
          </For>
          <For each={props.sheet.interruptions}>
            {({ what, from, to }) => (
              <tr>
                <td>Interrupted: {what}</td>
                <td>{both(from)}</td>
                <td>{to ? both(to) : 'not gone on with'}</td>
              </tr>
            )}
          </For>
        </tbody>
      </table>
    </section>
  );
}

const both = (time: RecordSheet['opened']): string => (time ? `${time.utc}; ${time.local}` : '–');

function Tools(props: { readonly sheet: RecordSheet }): JSX.Element {
  return (
    <section>
      <h2>Tools and calibration</h2>
      <table>
        <thead>
          <tr>
            <th scope="col">Tool</th>
            <th scope="col">Range</th>
            <th scope="col">Kind and accuracy</th>
            <th scope="col">Calibration due</th>
            <th scope="col">Used</th>
          </tr>
        </thead>
        <tbody>
          <For each={props.sheet.tools}>
            {({ name, id, range, accuracy, calibrationDue, used }) => (
              <tr>
                <td>
                  {name} ({id})
                </td>
                <td>{range}</td>
                <td>{accuracy}</td>
                <td>{calibrationDue}</td>
                <td>{used}</td>
              </tr>
            )}
          </For>
        </tbody>
      </table>
    </section>
  );
}

function Steps(props: { readonly sheet: RecordSheet }): JSX.Element {
  return (
    <section>
      <h2>Work</h2>
      <Show when={props.sheet.conditions.length > 0}>
        <p>{props.sheet.conditions.join(' ')}</p>
      </Show>
      <table>
        <thead>
          <tr>
            <th scope="col">Step</th>
            <th scope="col">Title</th>
            <th scope="col">Standing</th>
            <th scope="col">By</th>
            <th scope="col">When (UTC)</th>
          </tr>
        </thead>
        <tbody>
          <For each={props.sheet.steps}>
            {({ number, title, standing, remarks, by, at }) => (
              <tr>
                <td>{number}</td>
                <td>{title}</td>
                <td>{[standing, ...remarks].join('; ')}</td>
                <td>{by}</td>
                <td class="whole">{at?.utc ?? ''}</td>
              </tr>
            )}
          </For>
        </tbody>
      </table>
    </section>
  );
}

function Openings(props: { readonly sheet: RecordSheet }): JSX.Element {
  return (
    <section>
      <h2>Openings</h2>
      <Show when={props.sheet.openings.length > 0} fallback={<p>The procedure names none.</p>}>
        <table>
          <thead>
            <tr>
              <th scope="col">Opening</th>
              <th scope="col">Closure</th>
              <th scope="col">Opened and closed off in</th>
              <th scope="col">Closure taken out in</th>
            </tr>
          </thead>
          <tbody>
            <For each={props.sheet.openings}>
              {({ name, closure, opened, closed }) => (
                <tr>
                  <td>{name}</td>
                  <td>{closure}</td>
                  <td>{opened}</td>
                  <td>{closed}</td>
                </tr>
              )}
            </For>
          </tbody>
        </table>
      </Show>
      <p>The record counts no caps, plugs or tools by itself: see what was answered in the steps.</p>
    </section>
  );
}

const SIGNERS = ['Work done by', 'Second person', 'Inspected by'];

function Signatures(): JSX.Element {
  return (
    <section class="signatures">
      <h2>Signatures</h2>
      <table>
        <thead>
          <tr>
            <th scope="col">For</th>
            <th scope="col">Name</th>
            <th scope="col">Licence or stamp number</th>
            <th scope="col">Date</th>
            <th scope="col">Signature</th>
          </tr>
        </thead>
        <tbody>
          <For each={SIGNERS}>
            {(signer) => (
              <tr>
                <th scope="row">{signer}</th>
                <td />
                <td />
                <td />
                <td />
              </tr>
            )}
          </For>
        </tbody>
      </table>
    </section>
  );
}
