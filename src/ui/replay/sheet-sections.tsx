/** The sections of a record sheet that are tables, but for the torque tables. */
import { For, Show, type JSX } from 'solid-js';
import type { RecordSheet } from '../../record/record-sheet.ts';

export function Times(props: { readonly sheet: RecordSheet }): JSX.Element {
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
            <td>Work</td>
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

export function Tools(props: { readonly sheet: RecordSheet }): JSX.Element {
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

export function Preparation(props: { readonly sheet: RecordSheet }): JSX.Element {
  return (
    <section>
      <h2>Preparation</h2>
      <Show
        when={props.sheet.preparation.length > 0}
        fallback={<p>The record says nothing of what was done before the first step.</p>}
      >
        <table>
          <thead>
            <tr>
              <th scope="col">Found or said before the first step, or fetched in the work</th>
              <th scope="col">By</th>
              <th scope="col">When (UTC)</th>
            </tr>
          </thead>
          <tbody>
            <For each={props.sheet.preparation}>
              {({ what, isWarning, by, at }) => (
                <tr>
                  <td>{isWarning ? <b>{what}</b> : what}</td>
                  <td>{by}</td>
                  <td class="whole">{at.utc}</td>
                </tr>
              )}
            </For>
          </tbody>
        </table>
      </Show>
    </section>
  );
}

export function Steps(props: { readonly sheet: RecordSheet }): JSX.Element {
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

export function Openings(props: { readonly sheet: RecordSheet }): JSX.Element {
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
      <p>The record counts no caps, plugs or tools by itself: see what was answered, under “Points”.</p>
    </section>
  );
}

export function Points(props: { readonly sheet: RecordSheet }): JSX.Element {
  return (
    <Show when={props.sheet.points.length > 0}>
      <section>
        <h2>Points</h2>
        <table class="points">
          <thead>
            <tr>
              <th scope="col">Step</th>
              <th scope="col">Opening, cap, seal, criterion, count or value</th>
              <th scope="col">By</th>
              <th scope="col">When (UTC)</th>
            </tr>
          </thead>
          <tbody>
            <For each={props.sheet.points}>
              {({ step, what, by, at }) => (
                <tr>
                  <td>{step}</td>
                  <td>{what}</td>
                  <td>{by}</td>
                  <td class="whole">{at.utc}</td>
                </tr>
              )}
            </For>
          </tbody>
        </table>
      </section>
    </Show>
  );
}

const SIGNERS = ['Work done by', 'Second person', 'Inspected by'];

export function Signatures(props: { readonly recorded: readonly string[] }): JSX.Element {
  return (
    <section class="signatures">
      <h2>Signatures</h2>
      <ul>
        <For each={props.recorded}>{(line) => <li>{line}</li>}</For>
      </ul>
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
