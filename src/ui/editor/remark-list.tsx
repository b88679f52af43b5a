import { For, Show, type JSX } from 'solid-js';
import { pathOfPlace, placeWords } from '../../procedure/edit/place-words.ts';
import { remarks } from '../../words/remarks.ts';
import { type Remark, useEditor } from './editor.ts';

/** All that is missing, wrong or worth a look; each line leads to its field. */
export function RemarkList(): JSX.Element {
  const editor = useEditor();
  const count = (): number => editor.remarks().length;
  return (
    <section aria-labelledby="remarks" class="remarks">
      <h2 id="remarks">{remarks.title}</h2>
      <p role="status">{standing(editor.remarks())}</p>
      <Show when={count() > 0}>
        <ul>
          <For each={editor.remarks()}>
            {(remark) => (
              <li>
                <button type="button" class={remark.kind} onClick={() => leadTo(remark.place)}>
                  <b>{remarks.kinds[remark.kind]}</b>{' '}
                  <span>{placeWords(editor.draft(), pathOfPlace(remark.place))}</span>: {remark.words}
                </button>
              </li>
            )}
          </For>
        </ul>
      </Show>
    </section>
  );
}

function standing(all: readonly Remark[]): string {
  const faults = all.filter(({ kind }) => kind !== 'warning').length;
  if (faults > 0) return remarks.notReady(faults);
  return all.length === 0 ? remarks.nothing : remarks.ready(all.length);
}

/** Puts the focus on the field of a place, or on the nearest part of the page around it. */
function leadTo(place: string): void {
  const names = place.split('.');
  for (let length = names.length; length > 0; length--) {
    const found = document.querySelector(`[data-place="${CSS.escape(names.slice(0, length).join('.'))}"]`);
    if (!(found instanceof HTMLElement)) continue;
    const around = found.closest('details');
    if (around) around.open = true;
    found.focus();
    found.scrollIntoView({ block: 'center' });
    return;
  }
}
