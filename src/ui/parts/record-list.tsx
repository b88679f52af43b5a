import { For, Show, createEffect, type JSX } from 'solid-js';
import { stateAfter, type SessionRecord } from '../../record/session-record.ts';
import { describe } from '../describe.ts';
import { showMoment } from '../moment.ts';

/** The entries that can be trusted, oldest first, in plain words; where the record is broken, it says so at its end. */
export function RecordList(props: {
  readonly record: SessionRecord;
  readonly selected: number;
  readonly onSelect: (seq: number) => void;
}): JSX.Element {
  let list: HTMLOListElement | undefined;
  createEffect(() => {
    const line = list?.children.item(props.selected);
    if (list && line) showInside(list, line);
  });
  return (
    <ol class="record-list" ref={list}>
      <For each={props.record.entries}>
        {(entry) => (
          <li
            class={entry.body.kind.replaceAll(' ', '-')}
            aria-current={props.selected === entry.seq ? 'true' : undefined}
          >
            <button type="button" onClick={() => props.onSelect(entry.seq)}>
              <time datetime={entry.at.utc}>{showMoment(entry.at.utc)}</time>
              <span class="what">{describe(entry, stateAfter(props.record, entry.seq + 1))}</span>
              <span class="source">{entry.source}</span>
            </button>
          </li>
        )}
      </For>
      <Show when={props.record.verification.kind === 'broken'}>
        <li class="break">
          The record is broken here: entry {props.record.entries.length} and what comes after it is not shown.
        </li>
      </Show>
    </ol>
  );
}

/** Scrolls the list alone: the page, with the buttons that a finger is on, stays where it is. */
function showInside(list: Element, line: Element): void {
  const [frame, box] = [list.getBoundingClientRect(), line.getBoundingClientRect()];
  if (box.top < frame.top) list.scrollTop -= frame.top - box.top;
  else if (box.bottom > frame.bottom) list.scrollTop += box.bottom - frame.bottom;
}
