import { createSignal, For, Match, Show, Switch, type JSX } from 'solid-js';
import { compare, type Difference } from '../../procedure/edit/compare.ts';
import { fileText, wordsAt } from '../../procedure/edit/draft.ts';
import { startingDraft } from '../../procedure/edit/things.ts';
import { fromDataModule } from '../../procedure/import/data-module.ts';
import { FileButton } from '../parts/file-button.tsx';
import { handOver } from '../handed-over.ts';
import { messageOf } from '../message.ts';
import { go } from '../router.ts';
import { save } from '../saved-files.ts';
import { useEditor } from './editor.ts';
import { openDraft } from './open-draft.ts';

/** What came of the last file that was opened, imported or compared. */
type Outcome =
  | { readonly kind: 'said'; readonly words: string }
  | { readonly kind: 'refused'; readonly words: string; readonly why: readonly string[] }
  | { readonly kind: 'compared'; readonly file: string; readonly differences: readonly Difference[] };

/** Opens, imports, compares and saves the procedure, and begins a job with it. */
export function FileBar(): JSX.Element {
  const editor = useEditor();
  const [outcome, setOutcome] = createSignal<Outcome | null>(null);
  const fileName = (): string => `${wordsAt(editor.draft(), ['id']) || 'procedure'}.json`;

  /** Gives the text of a file on, or says that it cannot be read. */
  async function withText(file: File, take: (text: string) => Outcome): Promise<void> {
    try {
      setOutcome(take(await file.text()));
    } catch (error) {
      setOutcome({ kind: 'refused', words: `${file.name} cannot be read.`, why: [messageOf(error)] });
    }
  }
  const open = (file: File): Promise<void> =>
    withText(file, (text) => {
      const opened = openDraft(text);
      if (opened.kind === 'refused')
        return { kind: 'refused', words: `${file.name} cannot be opened.`, why: opened.why };
      editor.replace(opened.draft, null);
      return { kind: 'said', words: `${file.name} is open. What was here before comes back with “Undo”.` };
    });
  const importModule = (file: File): Promise<void> =>
    withText(file, (text) => {
      const found = fromDataModule(text);
      if (found.kind === 'refused')
        return { kind: 'refused', words: `${file.name} is not taken over.`, why: [found.why] };
      editor.replace(found.draft, { file: file.name, items: [...found.leftOut] });
      return { kind: 'said', words: `${file.name} is taken over, but for what is listed here.` };
    });
  const compareWith = (file: File): Promise<void> =>
    withText(file, (text) => {
      const opened = openDraft(text);
      if (opened.kind === 'refused') {
        return { kind: 'refused', words: `${file.name} cannot be compared.`, why: opened.why };
      }
      return { kind: 'compared', file: file.name, differences: compare(opened.draft, editor.draft()) };
    });

  function begin(): void {
    if (handOver(fileText(editor.draft()), fileName())) return go({ kind: 'start' });
    const why = ['The list below names what is still missing or wrong; each line leads to its field.'];
    setOutcome({ kind: 'refused', words: 'A job cannot begin with it yet.', why });
  }

  return (
    <div class="file-bar">
      <div class="choices">
        <button type="button" class="primary" onClick={begin}>
          Begin a job with it
        </button>
        <button
          type="button"
          onClick={() => {
            save({ name: fileName(), content: new Blob([fileText(editor.draft())], { type: 'application/json' }) });
            setOutcome({ kind: 'said', words: `${fileName()} is saved.` });
          }}
        >
          Save as a file
        </button>
        <button type="button" aria-disabled={!editor.canUndo()} onClick={() => editor.undo()}>
          Undo
        </button>
        <FileButton label="Open a procedure" accept=".json" onFile={(file) => void open(file)} />
        <FileButton label="Import a data module" accept=".xml" onFile={(file) => void importModule(file)} />
        <FileButton label="Compare with a version" accept=".json" onFile={(file) => void compareWith(file)} />
        <button
          type="button"
          onClick={() => {
            editor.replace(startingDraft(), null);
            setOutcome({ kind: 'said', words: 'A new procedure. What was here before comes back with “Undo”.' });
          }}
        >
          New procedure
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
            <h2 id="differences">Since {compared().file}</h2>
            <p role="status">
              {compared().differences.length === 0
                ? 'Nothing differs.'
                : `${compared().differences.length} differences:`}
            </p>
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
