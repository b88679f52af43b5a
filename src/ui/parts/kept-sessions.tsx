import { ErrorBoundary, For, Match, Show, Switch, createResource, untrack, type JSX } from 'solid-js';
import type { SessionRead, SessionRecord } from '../../record/session-record.ts';
import { practice } from '../../words/practice.ts';
import { keptHere } from '../../words/kept-here.ts';
import type { Shop } from '../app.tsx';
import { messageOf } from '../message.ts';
import { showMoment } from '../moment.ts';
import { isPractice } from '../practice/is-practice.ts';
import { addressOf } from '../router.ts';
import { findSession, stateAfter } from '../session-file.ts';
import { DeviceSealLine } from './device-seal-line.tsx';
import { KeptSounds } from './kept-sounds.tsx';
import { StorageLine } from './storage-line.tsx';
import { UnsavedLine } from './unsaved-line.tsx';
import { VerificationLine } from './verification-line.tsx';

/** The sessions that this browser keeps: to go on with, or to play back. One that is broken is listed as such. */
export function KeptSessions(props: { readonly shop: Shop }): JSX.Element {
  const { book } = untrack(() => props.shop);
  const [ids] = createResource(() => book.sessions());
  return (
    <section aria-labelledby="kept">
      <h2 id="kept">{keptHere.sessionsHere}</h2>
      <StorageLine asks={false} />
      <Switch fallback={<p>{keptHere.looking}</p>}>
        <Match when={ids.error as unknown}>
          {(error) => <p class="trouble">{keptHere.notListed(messageOf(error()))}</p>}
        </Match>
        <Match when={ids()}>
          {(found) => (
            <ul class="sessions">
              <For each={found()} fallback={<li>{keptHere.noneYet}</li>}>
                {(id) => <KeptSession shop={props.shop} id={id} />}
              </For>
            </ul>
          )}
        </Match>
      </Switch>
    </section>
  );
}

interface KeptProps {
  readonly shop: Shop;
  /** The record of this session has got another entry. */
  readonly onChanged: () => void;
}

/** Each session is read for itself: one that is broken or slow holds up no other. */
function KeptSession(props: { readonly shop: Shop; readonly id: string }): JSX.Element {
  const [read, { refetch }] = createResource(() => findSession(props.shop.book, props.id));
  return (
    <li>
      <ErrorBoundary fallback={(error: unknown) => <NotShown id={props.id} why={messageOf(error)} />}>
        <Switch fallback={<span>{keptHere.verifying(props.id)}</span>}>
          <Match when={read.error as unknown}>{(error) => <NotShown id={props.id} why={messageOf(error())} />}</Match>
          <Match when={read()}>
            {(found) => <Kept shop={props.shop} read={found()} onChanged={() => void refetch()} />}
          </Match>
        </Switch>
      </ErrorBoundary>
    </li>
  );
}

function Kept(props: KeptProps & { readonly read: SessionRead }): JSX.Element {
  return (
    <Switch>
      <Match when={props.read.kind === 'readable' && props.read.record}>
        {(record) => <Readable shop={props.shop} record={record()} onChanged={props.onChanged} />}
      </Match>
      <Match when={props.read.kind === 'unreadable' && props.read}>
        {(read) => (
          <>
            <div>
              <b>{keptHere.session(read().id)}</b>
              <VerificationLine verification={read().verification} found={read().found} />
            </div>
            <Replay id={read().id} />
          </>
        )}
      </Match>
    </Switch>
  );
}

function Readable(props: KeptProps & { readonly record: SessionRecord }): JSX.Element {
  const state = () => stateAfter(props.record, props.record.entries.length);
  const opened = () => props.record.entries[0]?.at.utc;
  const isClosed = () => state().phase === 'closed';
  const standing = () =>
    isClosed() ? keptHere.closed : keptHere.atStep(state().at + 1, props.record.procedure.steps.length);
  return (
    <>
      <div>
        <b>{props.record.procedure.title}</b>
        <Show when={isPractice(props.record.id)}>
          {' '}
          <span class="invented">{practice.noWork}</span>
        </Show>
        <br />
        <Show when={opened()}>{(utc) => <time datetime={utc()}>{showMoment(utc())}</time>}</Show>,{' '}
        {props.record.people.mechanic}: {standing()}
        <VerificationLine verification={props.record.verification} found={props.record.found} />
        <Show when={isClosed()}>
          <DeviceSealLine record={props.record} />
        </Show>
        <UnsavedLine session={props.record.id} entries={props.record.entries.length} />
        <KeptSounds shop={props.shop} record={props.record} onDeleted={props.onChanged} />
      </div>
      <Show when={!isClosed() && props.record.verification.kind === 'intact'}>
        <a class="button" href={addressOf({ kind: 'work', session: props.record.id })}>
          {keptHere.goOn}
        </a>
      </Show>
      <Replay id={props.record.id} />
    </>
  );
}

function NotShown(props: { readonly id: string; readonly why: string }): JSX.Element {
  return (
    <>
      <div>
        <b>{keptHere.session(props.id)}</b>
        <p class="verification broken" role="alert">
          {keptHere.notShown(props.why)}
        </p>
      </div>
      <Replay id={props.id} />
    </>
  );
}

function Replay(props: { readonly id: string }): JSX.Element {
  return (
    <a class="button" href={addressOf({ kind: 'replay', session: props.id })}>
      {keptHere.replay}
    </a>
  );
}
