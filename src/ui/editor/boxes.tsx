import { For, Show, type JSX } from 'solid-js';
import { listAt, type Path } from '../../procedure/edit/draft.ts';
import { toggled } from '../../procedure/edit/things.ts';
import { useEditor } from './editor.ts';
import { type Choice, Said } from './fields.tsx';

/** Some out of a few, a box for each. Nothing where there are none to choose from. */
export function Boxes(props: {
  readonly legend: string;
  readonly path: Path;
  readonly choices: readonly Choice[];
}): JSX.Element {
  const editor = useEditor();
  const isIn = (id: string): boolean => listAt(editor.draft(), props.path).includes(id);
  return (
    <Show when={props.choices.length > 0}>
      <fieldset class="boxes" data-place={props.path.join('.')} tabindex="-1">
        <legend>{props.legend}</legend>
        <For each={props.choices}>
          {({ value, label }) => (
            <label>
              <input
                type="checkbox"
                checked={isIn(value)}
                onChange={(event) => {
                  const [path, isChecked] = [props.path, event.currentTarget.checked];
                  editor.edit((draft) => toggled(draft, path, value, isChecked));
                }}
              />
              <span>{label}</span>
            </label>
          )}
        </For>
        <Said path={props.path} />
      </fieldset>
    </Show>
  );
}
