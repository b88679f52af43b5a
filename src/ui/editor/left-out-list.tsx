import { For, Show, type JSX } from 'solid-js';
import { useEditor } from './editor.ts';

/** What an import could not take over. It stays until the person says that it was looked up. */
export function LeftOutList(): JSX.Element {
  const editor = useEditor();
  return (
    <Show when={editor.leftOut()}>
      {(left) => (
        <section class="outcome" aria-labelledby="left-out">
          <h2 id="left-out">Not taken over from {left().file}</h2>
          <p>Look these up in the source and put in by hand what the work needs:</p>
          <ul>
            <For each={left().items} fallback={<li>Nothing: all of it is here.</li>}>
              {({ place, what }) => (
                <li>
                  <b>{place}</b>: {what}
                </li>
              )}
            </For>
          </ul>
          <button type="button" onClick={() => editor.settleLeftOut()}>
            All of it is looked up
          </button>
        </section>
      )}
    </Show>
  );
}
