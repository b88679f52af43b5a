import { createSignal, For, Match, Show, Switch, type JSX } from 'solid-js';
import { compare, type Difference } from '../../procedure/edit/compare.ts';
import { fileText, wordsAt } from '../../procedure/edit/draft.ts';
import { startingDraft } from '../../procedure/edit/things.ts';
import { fromDataModule } from '../../procedure/import/data-module.ts';
import { editorFiles } from '../../words/editor-files.ts';
import type { Shop } from '../app.tsx';
import { FileButton } from '../parts/file-button.tsx';
import { handOver } from '../handed-over.ts';
import { messageOf } from '../message.ts';
import { beginPreparing } from '../prepare/begin-preparing.ts';
import { save } from '../saved-files.ts';
import { useEditor } from './editor.ts';
import { openDraft } from './open-draft.ts';

/** What came of the last file that was opened, imported or compared. */
type Outcome =
  | { readonly kind: 'said'; readonly words: string }
  | { readonly kind: 'refused'; readonly words: string; readonly why: readonly string[] }
  | { readonly kind: 'compared'; readonly file: string; readonly differences: readonly Difference[] };

/** Opens, imports, compares and saves the procedure, and begins a job with it. */
export function FileBar(props: { readonly shop: Shop }): JSX.Element {
  const editor = useEditor();
  const [outcome, setOutcome] = createSignal<Outcome | null>(null);
  const fileName = (): string => `${wordsAt(editor.draft(), ['id']) || 'procedure'}.json`;

  /** Gives the text of a file on, or says that it cannot be read. */
  async function withText(file: File, take: (text: string) => Outcome): Promise<void> {
    try {
      setOutcome(take(await file.text()));
    } catch (error) {
      setOutcome({ kind: 'refused', words: editorFiles.notRead(file.name), why: [messageOf(error)] });
    }
  }
  const open = (file: File): Promise<void> =>
    withText(file, (text) => {
      const opened = openDraft(text);
      if (opened.kind === 'refused')
        return { kind: 'refused', words: editorFiles.notOpened(file.name), why: opened.why };
      editor.replace(opened.draft, null);
      return { kind: 'said', words: editorFiles.isOpen(file.name) };
    });
  const importModule = (file: File): Promise<void> =>
    withText(file, (text) => {
      const found = fromDataModule(text);
      if (found.kind === 'refused')
        return { kind: 'refused', words: editorFiles.notTakenOver(file.name), why: [found.why] };
      editor.replace(found.draft, { file: file.name, items: [...found.leftOut] });
      return { kind: 'said', words: editorFiles.takenOver(file.name) };
    });
  const compareWith = (file: File): Promise<void> =>
    withText(file, (text) => {
      const opened = openDraft(text);
      if (opened.kind === 'refused') {
        return { kind: 'refused', words: editorFiles.notCompared(file.name), why: opened.why };
      }
      return { kind: 'compared', file: file.name, differences: compare(opened.draft, editor.draft()) };
    });

  function begin(): void {
    const [text, file] = [fileText(editor.draft()), fileName()];
    // Whether sound may be kept is asked on the start screen only.
    if (handOver(text, file)) return beginPreparing(props.shop, { text, file, sound: 'not agreed' });
    setOutcome({ kind: 'refused', words: editorFiles.cannotBegin, why: [editorFiles.lookBelow] });
  }

  return (
    <div class="file-bar">
      <div class="choices">
        <button type="button" class="primary" onClick={begin}>
          {editorFiles.begin}
        </button>
        <button
          type="button"
          onClick={() => {
            save({ name: fileName(), content: new Blob([fileText(editor.draft())], { type: 'application/json' }) });
            setOutcome({ kind: 'said', words: editorFiles.saved(fileName()) });
          }}
        >
          {editorFiles.save}
        </button>
        <button type="button" aria-disabled={!editor.canUndo()} onClick={() => editor.undo()}>
          {editorFiles.undo}
        </button>
        <FileButton label={editorFiles.open} accept=".json" onFile={(file) => void open(file)} />
        <FileButton label={editorFiles.importModule} accept=".xml" onFile={(file) => void importModule(file)} />
        <FileButton label={editorFiles.compare} accept=".json" onFile={(file) => void compareWith(file)} />
        <button
          type="button"
          onClick={() => {
            editor.replace(startingDraft(), null);
            setOutcome({ kind: 'said', words: editorFiles.newIsOpen });
          }}
        >
          {editorFiles.newOne}
        </button>
      </div>
      <Show when={outcome()}>{(found) => <OutcomeView outcome={found()} />}</Show>
    </div>
  );
}

const ofKind = <Kind extends Outcome['kind']>(outcome: Outcome, kind: Kind) =>
  outcome.kind === kind ? (outcome as Extract<Outcome, { kind: Kind }>) : null;

function OutcomeView(props: { readonly outcome: Outcome }): JSX.Element {
  return (
    <Switch>
      <Match when={ofKind(props.outcome, 'said')}>{(said) => <p role="status">{said().words}</p>}</Match>
      <Match when={ofKind(props.outcome, 'refused')}>
        {(refused) => (
          <div class="trouble" role="alert">
            <p>{refused().words}</p>
            <ul>
              <For each={refused().why}>{(line) => <li>{line}</li>}</For>
            </ul>
          </div>
        )}
      </Match>
      <Match when={ofKind(props.outcome, 'compared')}>
        {(compared) => (
          <section class="outcome" aria-labelledby="differences">
            <h2 id="differences">{editorFiles.since(compared().file)}</h2>
            <p role="status">{editorFiles.differences(compared().differences.length)}</p>
            <ul>
              <For each={compared().differences}>
                {({ place, words }) => (
                  <li>
                    <b>{place}</b>: {words}
                  </li>
                )}
              </For>
            </ul>
          </section>
        )}
      </Match>
    </Switch>
  );
}
