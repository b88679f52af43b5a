import { For, Show, type JSX } from 'solid-js';
import { listAt, type Path, wordsAt } from '../../procedure/edit/draft.ts';
import { toggled } from '../../procedure/edit/things.ts';
import { useEditor } from './editor.ts';
import { Said } from './fields.tsx';

/** Which of the things of a list a step is about: a box for each. Nothing where the list has none. */
export function IdBoxes(props: {
  readonly legend: string;
  readonly path: Path;
  readonly from: 'openings' | 'patterns';
}): JSX.Element {
  const editor = useEditor();
  const things = () => listAt(editor.draft(), [props.from]);
  const isIn = (id: string): boolean => listAt(editor.draft(), props.path).includes(id);
  return (
    <Show when={things().length > 0}>
      <fieldset class="boxes" data-place={props.path.join('.')} tabindex="-1">
        <legend>{props.legend}</legend>
        <For each={things()}>
          {(thing) => {
            const id = wordsAt(thing, ['id']);
            return (
              <label>
                <input
                  type="checkbox"
                  checked={isIn(id)}
                  onChange={(event) => {
                    const [path, isChecked] = [props.path, event.currentTarget.checked];
                    editor.edit((draft) => toggled(draft, path, id, isChecked));
                  }}
                />
                <span>{wordsAt(thing, ['name']) || id}</span>
              </label>
            );
          }}
        </For>
        <Said path={props.path} />
      </fieldset>
    </Show>
  );
}
