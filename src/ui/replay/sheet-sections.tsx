/** The sections of a record sheet that are tables, but for the torque tables. */
import { For, Show, type JSX } from 'solid-js';
import type { RecordSheet } from '../../record/record-sheet.ts';
import { sheetPage } from '../../words/sheet-page.ts';
import { sheetWork } from '../../words/sheet-work.ts';

export function Times(props: { readonly sheet: RecordSheet }): JSX.Element {
  return (
    <section>
      <h2>{sheetPage.people.title}</h2>
      <table>
        <thead>
          <tr>
            <th scope="col">{sheetPage.people.who}</th>
            <th scope="col">{sheetPage.people.from}</th>
            <th scope="col">{sheetPage.people.to}</th>
          </tr>
        </thead>
        <tbody>
          <tr>
            <td>{sheetPage.people.work}</td>
            <td>{both(props.sheet.opened)}</td>
            <td>{both(props.sheet.ended)}</td>
          </tr>
          <For each={props.sheet.people}>
            {({ name, role, from, to }) => (
              <tr>
                <td>{sheetPage.people.inRole(name, role)}</td>
                <td>{both(from)}</td>
                <td>{to ? both(to) : sheetPage.people.toTheEnd}</td>
              </tr>
            )}
          </For>
          <For each={props.sheet.interruptions}>
            {({ what, from, to }) => (
              <tr>
                <td>{sheetPage.people.interrupted(what)}</td>
                <td>{both(from)}</td>
                <td>{to ? both(to) : sheetPage.people.notGoneOn}</td>
              </tr>
            )}
          </For>
        </tbody>
      </table>
    </section>
  );
}

const both = (time: RecordSheet['opened']): string => (time ? sheetPage.times(time.utc, time.local) : sheetPage.noTime);

export function Tools(props: { readonly sheet: RecordSheet }): JSX.Element {
  return (
    <section>
      <h2>{sheetPage.tools.title}</h2>
      <table>
        <thead>
          <tr>
            <th scope="col">{sheetPage.tools.tool}</th>
            <th scope="col">{sheetPage.tools.range}</th>
            <th scope="col">{sheetPage.tools.accuracy}</th>
            <th scope="col">{sheetPage.tools.due}</th>
            <th scope="col">{sheetPage.tools.used}</th>
          </tr>
        </thead>
        <tbody>
          <For each={props.sheet.tools}>
            {({ name, id, range, accuracy, calibrationDue, used }) => (
              <tr>
                <td>{sheetPage.tools.named(name, id)}</td>
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
      <h2>{sheetPage.preparation.title}</h2>
      <Show when={props.sheet.preparation.length > 0} fallback={<p>{sheetPage.preparation.none}</p>}>
        <table>
          <thead>
            <tr>
              <th scope="col">{sheetPage.preparation.what}</th>
              <th scope="col">{sheetPage.by}</th>
              <th scope="col">{sheetPage.when}</th>
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
      <h2>{sheetPage.steps.title}</h2>
      <Show when={props.sheet.conditions.length > 0}>
        <p>{props.sheet.conditions.join(' ')}</p>
      </Show>
      <table>
        <thead>
          <tr>
            <th scope="col">{sheetPage.steps.step}</th>
            <th scope="col">{sheetPage.steps.name}</th>
            <th scope="col">{sheetPage.steps.standing}</th>
            <th scope="col">{sheetPage.by}</th>
            <th scope="col">{sheetPage.when}</th>
          </tr>
        </thead>
        <tbody>
          <For each={props.sheet.steps}>
            {({ number, title, standing, remarks, by, at }) => (
              <tr>
                <td>{number}</td>
                <td>{title}</td>
                <td>{[sheetWork.standings[standing], ...remarks].join('; ')}</td>
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
      <h2>{sheetPage.openings.title}</h2>
      <Show when={props.sheet.openings.length > 0} fallback={<p>{sheetPage.namesNone}</p>}>
        <table>
          <thead>
            <tr>
              <th scope="col">{sheetPage.openings.opening}</th>
              <th scope="col">{sheetPage.openings.closure}</th>
              <th scope="col">{sheetPage.openings.opened}</th>
              <th scope="col">{sheetPage.openings.closed}</th>
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
      <p>{sheetPage.openings.notCounted}</p>
    </section>
  );
}

export function Points(props: { readonly sheet: RecordSheet }): JSX.Element {
  return (
    <Show when={props.sheet.points.length > 0}>
      <section>
        <h2>{sheetPage.points.title}</h2>
        <table class="points">
          <thead>
            <tr>
              <th scope="col">{sheetPage.points.step}</th>
              <th scope="col">{sheetPage.points.what}</th>
              <th scope="col">{sheetPage.by}</th>
              <th scope="col">{sheetPage.when}</th>
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

const SIGNERS = ['work', 'second', 'inspector'] as const;

export function Signatures(props: { readonly recorded: readonly string[] }): JSX.Element {
  return (
    <section class="signatures">
      <h2>{sheetPage.signatures.title}</h2>
      <ul>
        <For each={props.recorded}>{(line) => <li>{line}</li>}</For>
      </ul>
      <table>
        <thead>
          <tr>
            <th scope="col">{sheetPage.signatures.for}</th>
            <th scope="col">{sheetPage.signatures.name}</th>
            <th scope="col">{sheetPage.signatures.licence}</th>
            <th scope="col">{sheetPage.signatures.date}</th>
            <th scope="col">{sheetPage.signatures.signature}</th>
          </tr>
        </thead>
        <tbody>
          <For each={SIGNERS}>
            {(signer) => (
              <tr>
                <th scope="row">{sheetPage.signatures.signers[signer]}</th>
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
