import { For, type JSX } from 'solid-js';
import type { Entry } from '../../record/entry.ts';
import { describe } from '../describe.ts';

/** Entries in plain words, newest where the eye is. */
export function RecordList(props: {
  readonly entries: readonly Entry[];
  readonly selected?: number;
  readonly onSelect?: (seq: number) => void;
}): JSX.Element {
  return (
    <ol class="record-list">
      <For each={props.entries}>
        {(entry) => (
          <li
            class={entry.body.kind.replaceAll(' ', '-')}
            aria-current={props.selected === entry.seq ? 'true' : undefined}
          >
            <button type="button" onClick={() => props.onSelect?.(entry.seq)} disabled={!props.onSelect}>
              <time datetime={entry.at.utc}>{timeOf(entry.at.utc)}</time>
              <span class="what">{describe(entry)}</span>
              <span class="source">{entry.source}</span>
            </button>
          </li>
        )}
      </For>
    </ol>
  );
}

/** Local time of day, to the second. */
const timeOf = (utc: string): string => new Date(utc).toLocaleTimeString([], { hour12: false });
