import { createResource, createSignal, Match, Show, Switch, untrack, type JSX } from 'solid-js';
import { partsBeside } from '../../procedure/edit/findings.ts';
import { openDraftBook } from '../../storage/draft-book.ts';
import { draftPlaces } from '../../words/draft-places.ts';
import { editorPage } from '../../words/editor-page.ts';
import type { Shop } from '../app.tsx';
import { Trouble } from '../parts/trouble.tsx';
import { WayBack } from '../parts/way-back.tsx';
import { createPen } from '../pen-of-screen.ts';
import { addressOf } from '../router.ts';
import { createEditor, type Editor, EditorContext } from './editor.ts';
import { FileBar } from './file-bar.tsx';
import { HeadSection } from './head-section.tsx';
import { LeftOutList } from './left-out-list.tsx';
import { PatternSection } from './pattern-section.tsx';
import { RemarkList } from './remark-list.tsx';
import { SayContext } from './say-button.tsx';
import { StepSection } from './step-section.tsx';
import { StockSection } from './stock-section.tsx';
import { ToolSection } from './tool-section.tsx';
import './editor.css';

/** Makes and edits a procedure without a word of JSON. The draft is kept on this device with every change. */
export function EditorScreen(props: { readonly shop: Shop }): JSX.Element {
  const book = openDraftBook();
  const [attempt, setAttempt] = createSignal(1);
  const pen = createPen('draft');
  // A browser that keeps nothing is no reason not to write one; another window that writes on the same draft is.
  const [editor] = createResource(attempt, async () =>
    (await pen().catch(() => true)) ? createEditor(book, await book.read().catch(() => null)) : 'elsewhere',
  );
  const say = (texts: readonly string[]): void => {
    const { devices } = untrack(() => props.shop);
    // Browsers give sound only in a tap; the ear stays as it is.
    void devices.speaking.unlock();
    void devices.announce(texts);
  };
  return (
    <Switch fallback={<p class="opening">{editorPage.opening}</p>}>
      <Match when={editor() === 'elsewhere'}>
        <WayBack>
          {editorPage.elsewhere(
            <button type="button" onClick={() => setAttempt((count) => count + 1)}>
              {editorPage.lookAgain}
            </button>,
          )}
        </WayBack>
      </Match>
      <Match when={written(editor())}>
        {(ready) => (
          <EditorContext.Provider value={ready()}>
            <SayContext.Provider value={say}>
              <EditorPage shop={props.shop} editor={ready()} />
            </SayContext.Provider>
          </EditorContext.Provider>
        )}
      </Match>
    </Switch>
  );
}

const written = (opened: Editor | 'elsewhere' | undefined): Editor | null =>
  opened === undefined || opened === 'elsewhere' ? null : opened;

/** The parts of a file that the page has fields for. */
const SHOWN = [
  '$schema',
  'format',
  'version',
  'id',
  'title',
  'invented',
  'signatures',
  'source',
  'persons',
  'component',
  'container',
  'conditions',
  'adapters',
  'openings',
  'tools',
  'seals',
  'consumables',
  'patterns',
  'steps',
];

function EditorPage(props: { readonly shop: Shop; readonly editor: Editor }): JSX.Element {
  const kept = (): readonly string[] => partsBeside(props.editor.draft(), SHOWN).map((name) => draftPlaces.field(name));
  const notKept = (): string | null => {
    const trouble = props.editor.trouble();
    return trouble && editorPage.notKept(trouble);
  };
  return (
    <main class="editor">
      <header>
        <h1>{editorPage.title}</h1>
        <p>{editorPage.manualDecides}</p>
        <a class="button" href={addressOf({ kind: 'start' })}>
          {editorPage.back}
        </a>
      </header>
      <FileBar shop={props.shop} />
      <LeftOutList />
      <Trouble text={notKept()} />
      <HeadSection />
      <PatternSection />
      <ToolSection />
      <StockSection />
      <StepSection />
      <Show when={kept().length > 0}>
        <p class="kept">{editorPage.withoutFields(kept())}</p>
      </Show>
      <RemarkList />
    </main>
  );
}
