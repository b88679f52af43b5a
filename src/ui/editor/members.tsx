import { Index, untrack, type JSX } from 'solid-js';
import { type Draft, type Json, listAt, move, type Path, take } from '../../procedure/edit/draft.ts';
import { useEditor } from './editor.ts';
import { Said } from './fields.tsx';

/** The members of a list, each with its buttons to move and remove it, and one to add another. */
export function Members(props: {
  readonly list: Path;
  /** What one of them is called: "Pattern". */
  readonly one: string;
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
            <legend>
              {props.one} {i + 1}
            </legend>
            <Said path={[...props.list, i]} own />
            {props.children([...props.list, i], member)}
            <MemberButtons list={props.list} index={i} count={members().length} one={props.one} />
          </fieldset>
        )}
      </Index>
      <Said path={props.list} own />
      <button type="button" data-place={props.list.join('.')} onClick={() => editor.edit(untrack(() => props.onAdd))}>
        {/^[aeiou]/iu.test(props.one) ? 'Add an' : 'Add a'} {props.one.toLowerCase()}
      </button>
    </>
  );
}

/** Moves and removes one member of a list. The focus goes with a member that moves. */
export function MemberButtons(props: {
  readonly list: Path;
  readonly index: number;
  readonly count: number;
  readonly one: string;
}): JSX.Element {
  const editor = useEditor();
  const called = (): string => `${props.one.toLowerCase()} ${props.index + 1}`;
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
        aria-label={`Move ${called()} up`}
        onClick={() => shift(-1)}
      >
        Up
      </button>
      <button
        type="button"
        id={idOf('down', props.index)}
        aria-disabled={props.index === props.count - 1}
        aria-label={`Move ${called()} down`}
        onClick={() => shift(1)}
      >
        Down
      </button>
      <button
        type="button"
        aria-label={`Remove ${called()}`}
        onClick={() => {
          const path = [...props.list, props.index];
          editor.edit((draft) => take(draft, path));
        }}
      >
        Remove
      </button>
    </div>
  );
}
