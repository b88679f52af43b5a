import { For, Show, type JSX } from 'solid-js';
import { editorFiles } from '../../words/editor-files.ts';
import { useEditor } from './editor.ts';

/** What an import could not take over. It stays until the person says that it was looked up. */
export function LeftOutList(): JSX.Element {
  const editor = useEditor();
  return (
    <Show when={editor.leftOut()}>
      {(left) => (
        <section class="outcome" aria-labelledby="left-out">
          <h2 id="left-out">{editorFiles.leftOut.title(left().file)}</h2>
          <p>{editorFiles.leftOut.lookUp}</p>
          <ul>
            <For each={left().items} fallback={<li>{editorFiles.leftOut.nothing}</li>}>
              {({ place, what }) => (
                <li>
                  <b>{place}</b>: {what}
                </li>
              )}
            </For>
          </ul>
          <button type="button" onClick={() => editor.settleLeftOut()}>
            {editorFiles.leftOut.isLookedUp}
          </button>
        </section>
      )}
    </Show>
  );
}
