import { createEffect, createMemo, createSignal, For, Show, type JSX } from 'solid-js';
import { stateAfter, type SessionRecord } from '../../record/session-record.ts';
import { describe } from '../describe.ts';
import { showMoment } from '../moment.ts';
import { EVENT_KINDS, eventKinds, type EventKind } from './event-kinds.ts';
import { pageAround, pageOf } from './pages.ts';
import { found, type EventLine } from './search.ts';

/** The events that can be trusted, in words, oldest first, a page at a time; all of them, or those that are looked for. */
export function EventList(props: {
  readonly record: SessionRecord;
  readonly lines: readonly EventLine[];
  readonly selected: number;
  readonly onSelect: (seq: number) => void;
}): JSX.Element {
  const [query, setQuery] = createSignal('');
  const [kinds, setKinds] = createSignal<ReadonlySet<EventKind>>(new Set());
  const [person, setPerson] = createSignal<string | null>(null);
  const wanted = createMemo(() =>
    found(props.record, props.lines, { query: query(), kinds: kinds(), person: person() }),
  );
  const present = createMemo(() => new Set(props.lines.flatMap((line) => line.kinds)));
  const people = createMemo(() => [...new Set(props.lines.map((line) => line.person))]);
  const isAll = () => wanted().length === props.lines.length;
  const toggle = (kind: EventKind): void =>
    void setKinds((before) => {
      const after = new Set(before);
      if (!after.delete(kind)) after.add(kind);
      return after;
    });
  return (
    <section class="events" aria-label="Events">
      <form class="search" role="search" onSubmit={(event) => event.preventDefault()}>
        <label>
          Search: words said, stud 4, a value, a name
          <input type="search" value={query()} onInput={(event) => setQuery(event.currentTarget.value)} />
        </label>
        <label>
          Person
          <select value={person() ?? ''} onChange={(event) => setPerson(event.currentTarget.value || null)}>
            <option value="">Everybody</option>
            <For each={people()}>{(name) => <option value={name}>{name}</option>}</For>
          </select>
        </label>
        <details>
          <summary>Only some kinds{kinds().size > 0 ? ` (${kinds().size} chosen)` : ''}</summary>
          <fieldset>
            <legend class="unseen">Kinds of event</legend>
            <For each={eventKinds.filter((kind) => present().has(kind))}>
              {(kind) => (
                <label class="choice">
                  <input type="checkbox" checked={kinds().has(kind)} onChange={() => toggle(kind)} />
                  {EVENT_KINDS[kind]}
                </label>
              )}
            </For>
          </fieldset>
        </details>
        <p role="status">
          {isAll() ? `All ${props.lines.length} events` : `${wanted().length} of ${props.lines.length} events`}
        </p>
      </form>
      <Page {...props} wanted={wanted()} isAll={isAll()} />
    </section>
  );
}

function Page(props: {
  readonly record: SessionRecord;
  readonly wanted: readonly number[];
  readonly isAll: boolean;
  readonly selected: number;
  readonly onSelect: (seq: number) => void;
}): JSX.Element {
  let list: HTMLOListElement | undefined;
  const [page, setPage] = createSignal(0);
  // The page follows what is shown; it can be turned until something else is shown.
  createEffect(() => setPage(pageAround(props.wanted, props.selected)));
  const shown = createMemo(() => pageOf(props.wanted, page()));
  createEffect(() => {
    shown();
    const line = list?.querySelector(`[data-seq="${props.selected}"]`);
    if (list && line) showInside(list, line);
  });
  const isAtEnd = () => shown().to === props.wanted.length;
  return (
    <>
      <ol class="record-list" ref={list}>
        <For each={shown().items}>
          {(seq) => (
            <Show when={props.record.entries[seq]}>
              {(entry) => (
                <li
                  class={entry().body.kind.replaceAll(' ', '-')}
                  data-seq={seq}
                  aria-current={props.selected === seq ? 'true' : undefined}
                >
                  <button type="button" onClick={() => props.onSelect(seq)}>
                    <time datetime={entry().at.utc}>{showMoment(entry().at.utc)}</time>
                    <span class="what">{describe(entry(), stateAfter(props.record, seq + 1))}</span>
                    <span class="source">{entry().source}</span>
                  </button>
                </li>
              )}
            </Show>
          )}
        </For>
        <Show when={props.record.verification.kind === 'broken' && isAtEnd() && props.isAll}>
          <li class="break">
            The record is broken here: entry {props.record.entries.length} and what comes after it is not shown.
          </li>
        </Show>
      </ol>
      <Show when={shown().pages > 1}>
        <nav class="pages" aria-label="Pages of events">
          <button type="button" aria-disabled={page() === 0} onClick={() => setPage(Math.max(0, page() - 1))}>
            Earlier
          </button>
          <span>
            {shown().from + 1} to {shown().to} of {props.wanted.length}
          </span>
          <button
            type="button"
            aria-disabled={isAtEnd()}
            onClick={() => setPage(Math.min(shown().pages - 1, page() + 1))}
          >
            Later
          </button>
        </nav>
      </Show>
    </>
  );
}

/** Scrolls the list alone: the page, with the buttons that a finger is on, stays where it is. */
function showInside(list: Element, line: Element): void {
  const [frame, box] = [list.getBoundingClientRect(), line.getBoundingClientRect()];
  if (box.top < frame.top) list.scrollTop -= frame.top - box.top;
  else if (box.bottom > frame.bottom) list.scrollTop += box.bottom - frame.bottom;
}
