import { Index, untrack, type JSX } from 'solid-js';
import { type Draft, type Json, listAt, move, type Path, take } from '../../procedure/edit/draft.ts';
import { editorPage, type Member } from '../../words/editor-page.ts';
import { useEditor } from './editor.ts';
import { Said } from './fields.tsx';

/** The members of a list, each with its buttons to move and remove it, and one to add another. */
export function Members(props: {
  readonly list: Path;
  readonly one: Member;
  readonly onAdd: (draft: Draft) => Draft;
  readonly children: (path: Path, member: () => Json) => JSX.Element;
}): JSX.Element {
  const editor = useEditor();
  const members = (): readonly Json[] => listAt(editor.draft(), props.list);
  return (
    <>
      <Index each={members()}>
        {(member, i) => (
          <fieldset class="member" data-place={[...props.list, i].join('.')} tabindex="-1">
            <legend>{editorPage.numbered(props.one, i + 1)}</legend>
            <Said path={[...props.list, i]} own />
            {props.children([...props.list, i], member)}
            <MemberButtons list={props.list} index={i} count={members().length} one={props.one} />
          </fieldset>
        )}
      </Index>
      <Said path={props.list} own />
      <button type="button" data-place={props.list.join('.')} onClick={() => editor.edit(untrack(() => props.onAdd))}>
        {editorPage.add(props.one)}
      </button>
    </>
  );
}

/** Moves and removes one member of a list. The focus goes with a member that moves. */
export function MemberButtons(props: {
  readonly list: Path;
  readonly index: number;
  readonly count: number;
  readonly one: Member;
}): JSX.Element {
  const editor = useEditor();
  const idOf = (direction: 'up' | 'down', index: number): string => `${direction}-${props.list.join('-')}-${index}`;
  const shift = (by: -1 | 1): void => {
    const to = props.index + by;
    if (to < 0 || to >= props.count) return;
    const { list, index } = untrack(() => ({ list: props.list, index: props.index }));
    editor.edit((draft) => move(draft, list, index, by));
    document.getElementById(idOf(by < 0 ? 'up' : 'down', to))?.focus();
  };
  return (
    <div class="member-buttons">
      <button
        type="button"
        id={idOf('up', props.index)}
        aria-disabled={props.index === 0}
        aria-label={editorPage.moveUp(props.one, props.index + 1)}
        onClick={() => shift(-1)}
      >
        {editorPage.up}
      </button>
      <button
        type="button"
        id={idOf('down', props.index)}
        aria-disabled={props.index === props.count - 1}
        aria-label={editorPage.moveDown(props.one, props.index + 1)}
        onClick={() => shift(1)}
      >
        {editorPage.down}
      </button>
      <button
        type="button"
        aria-label={editorPage.removeOne(props.one, props.index + 1)}
        onClick={() => {
          const path = [...props.list, props.index];
          editor.edit((draft) => take(draft, path));
        }}
      >
        {editorPage.remove}
      </button>
    </div>
  );
}
