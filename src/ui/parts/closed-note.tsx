import { For, Show, createResource, type JSX } from 'solid-js';
import { signaturesOf } from '../../record/sheet/observed.ts';
import type { SessionState } from '../../session/state.ts';
import type { RecordBook } from '../../storage/record-book.ts';
import { signing } from '../../words/signing.ts';
import { addressOf } from '../router.ts';
import { readSession } from '../session-file.ts';
import { DeviceSealLine } from './device-seal-line.tsx';
import { UnsavedLine } from './unsaved-line.tsx';

/** Who signed a record that was just closed, and what is to be done with it: whether it is sealed here, and that it is kept nowhere else. */
export function ClosedNote(props: {
  readonly book: RecordBook;
  readonly session: string;
  readonly entries: number;
  readonly state: SessionState;
  /** Whether sealing is over, well or not: before that there is nothing to look for. */
  readonly isSealingOver: boolean;
}): JSX.Element {
  // What lies on the disk is looked at, not what is in memory.
  const [record] = createResource(
    () => props.isSealingOver && { book: props.book, session: props.session },
    ({ book, session }) => readSession(book, session).catch(() => null),
  );
  return (
    <section class="closed-note" aria-label={signing.closedRecord}>
      <For each={signaturesOf(props.state, 'UTC')}>{(line) => <p>{line}</p>}</For>
      <UnsavedLine session={props.session} entries={props.entries} />
      <Show when={record()}>{(found) => <DeviceSealLine record={found()} />}</Show>
      <a class="button" href={addressOf({ kind: 'replay', session: props.session })}>
        {signing.replayAndSave}
      </a>
    </section>
  );
}
