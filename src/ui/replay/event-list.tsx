import { createEffect, createMemo, createSignal, For, Show, type JSX } from 'solid-js';
import { stateAfter, type SessionRecord } from '../../record/session-record.ts';
import { events } from '../../words/events.ts';
import { describe } from '../describe.ts';
import { showMoment } from '../moment.ts';
import { EVENT_KINDS, type EventKind } from './event-kinds.ts';
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
    <section class="events" aria-label={events.title}>
      <form class="search" role="search" onSubmit={(event) => event.preventDefault()}>
        <label>
          {events.search}
          <input type="search" value={query()} onInput={(event) => setQuery(event.currentTarget.value)} />
        </label>
        <label>
          {events.person}
          <select value={person() ?? ''} onChange={(event) => setPerson(event.currentTarget.value || null)}>
            <option value="">{events.everybody}</option>
            <For each={people()}>{(name) => <option value={name}>{name}</option>}</For>
          </select>
        </label>
        <details>
          <summary>{events.someKinds(kinds().size)}</summary>
          <fieldset>
            <legend class="unseen">{events.kindsOfEvent}</legend>
            <For each={EVENT_KINDS.filter((kind) => present().has(kind))}>
              {(kind) => (
                <label class="choice">
                  <input type="checkbox" checked={kinds().has(kind)} onChange={() => toggle(kind)} />
                  {events.kinds[kind]}
                </label>
              )}
            </For>
          </fieldset>
        </details>
        <p role="status">
          {isAll() ? events.all(props.lines.length) : events.found(wanted().length, props.lines.length)}
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
                    <span class="source">{events.sources[entry().source]}</span>
                  </button>
                </li>
              )}
            </Show>
          )}
        </For>
        <Show when={props.record.verification.kind === 'broken' && isAtEnd() && props.isAll}>
          <li class="break">{events.brokenHere(props.record.entries.length)}</li>
        </Show>
      </ol>
      <Show when={shown().pages > 1}>
        <nav class="pages" aria-label={events.pages}>
          <button type="button" aria-disabled={page() === 0} onClick={() => setPage(Math.max(0, page() - 1))}>
            {events.earlier}
          </button>
          <span>{events.shown(shown().from + 1, shown().to, props.wanted.length)}</span>
          <button
            type="button"
            aria-disabled={isAtEnd()}
            onClick={() => setPage(Math.min(shown().pages - 1, page() + 1))}
          >
            {events.later}
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
