import { createSignal, Show, untrack, type JSX } from 'solid-js';
import { type Path, put } from '../../procedure/edit/draft.ts';
import { fastenersFromCsv } from '../../procedure/import/fasteners-csv.ts';
import { editorFiles } from '../../words/editor-files.ts';
import { messageOf } from '../message.ts';
import { FileButton } from '../parts/file-button.tsx';
import { useEditor } from './editor.ts';

/** Takes the places of a pattern out of a table, and says what came of it. */
export function FastenerTable(props: { readonly path: Path }): JSX.Element {
  const editor = useEditor();
  const [outcome, setOutcome] = createSignal<{ readonly isRead: boolean; readonly lines: readonly string[] } | null>(
    null,
  );

  async function read(file: File): Promise<void> {
    let text: string;
    try {
      text = await file.text();
    } catch (error) {
      setOutcome({ isRead: false, lines: [editorFiles.table.notRead(file.name, messageOf(error))] });
      return;
    }
    const found = fastenersFromCsv(text);
    if (found.kind === 'faulty') {
      const lines = found.faults.map(({ line, column, message }) => editorFiles.table.fault(line, column, message));
      setOutcome({ isRead: false, lines: [editorFiles.notTakenOver(file.name), ...lines] });
      return;
    }
    const { layout, thread, count, decimalCommas } = found;
    const path = untrack(() => props.path);
    editor.edit((draft) => {
      const laid = put(draft, [...path, 'layout'], layout);
      return thread === null ? laid : put(laid, [...path, 'thread'], thread);
    });
    const commas = decimalCommas > 0 ? [editorFiles.table.decimalCommas(decimalCommas)] : [];
    setOutcome({ isRead: true, lines: [editorFiles.table.taken(count, file.name), ...commas] });
  }

  return (
    <div class="table-import">
      <FileButton label={editorFiles.table.take} accept=".csv,.txt" onFile={(file) => void read(file)} />
      <p class="hint">{editorFiles.table.header}</p>
      <Show when={outcome()}>
        {(found) => (
          <p role={found().isRead ? 'status' : 'alert'} classList={{ trouble: !found().isRead }} class="lines-of">
            {found().lines.join('\n')}
          </p>
        )}
      </Show>
    </div>
  );
}
