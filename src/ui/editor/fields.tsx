import { createSignal, For, Show, untrack, type JSX } from 'solid-js';
import { at, type Path, put, take, wordsAt } from '../../procedure/edit/draft.ts';
import { type Notation, words } from '../../procedure/edit/typed.ts';
import { unitsOf, type Kind } from '../../units/index.ts';
import { editorPage } from '../../words/editor-page.ts';
import { type Remark, useEditor } from './editor.ts';

/** A place of the draft as the id of its field. */
export const fieldId = (path: Path): string => `at-${path.join('-')}`;

/** What is said about a field, always in the room kept for it below: nothing moves when it appears. */
export function Said(props: {
  readonly path: Path;
  /** Only about the place itself, not about what is in it. */ readonly own?: boolean;
}): JSX.Element {
  const remarks = useRemarks(
    () => props.path,
    () => props.own ?? false,
  );
  return (
    <p class="said" id={`${fieldId(props.path)}-said`}>
      <For each={remarks()}>{({ words, kind }) => <span class={kind}>{words} </span>}</For>
    </p>
  );
}

function useRemarks(path: () => Path, own: () => boolean): () => readonly Remark[] {
  const { remarks } = useEditor();
  return () => {
    const here = path().join('.');
    return remarks().filter(({ place }) => place === here || (!own() && place.startsWith(`${here}.`)));
  };
}

/** What every control of a field carries. */
function useControl(path: () => Path) {
  const remarks = useRemarks(path, () => false);
  return {
    id: () => fieldId(path()),
    place: () => path().join('.'),
    said: () => `${fieldId(path())}-said`,
    isInvalid: () => remarks().some(({ kind }) => kind === 'fault'),
  };
}

/** Words or numbers in one line, or in several. */
export function Field(props: {
  readonly label: string;
  readonly path: Path;
  readonly notation?: Notation;
  readonly lines?: number;
  readonly hint?: string;
  readonly numeric?: boolean;
  /** In place of putting the words at the path. */
  readonly onTyped?: (typed: string) => void;
}): JSX.Element {
  const editor = useEditor();
  const notation = (): Notation => props.notation ?? words;
  const control = useControl(() => props.path);
  // What is being typed is not put into order under the cursor, as long as it still says what the draft says.
  const [typing, setTyping] = createSignal<string | null>(null);
  const shown = (): string => {
    const [typed, json] = [typing(), at(editor.draft(), props.path)];
    const isCurrent = typed !== null && JSON.stringify(notation().read(typed)) === JSON.stringify(json ?? null);
    return isCurrent ? typed : notation().show(json);
  };
  const type = (typed: string): void => {
    setTyping(typed);
    if (props.onTyped) props.onTyped(typed);
    else editor.set(props.path, notation().read(typed));
  };
  return (
    <div class="field">
      <label for={control.id()}>{props.label}</label>
      <Show
        when={props.lines}
        fallback={
          <input
            id={control.id()}
            data-place={control.place()}
            value={shown()}
            inputmode={props.numeric ? 'decimal' : undefined}
            placeholder={props.hint}
            aria-invalid={control.isInvalid()}
            aria-describedby={control.said()}
            onInput={(event) => type(event.currentTarget.value)}
            onBlur={() => setTyping(null)}
          />
        }
      >
        {(lines) => (
          <textarea
            id={control.id()}
            data-place={control.place()}
            value={shown()}
            rows={lines()}
            placeholder={props.hint}
            aria-invalid={control.isInvalid()}
            aria-describedby={control.said()}
            onInput={(event) => type(event.currentTarget.value)}
            onBlur={() => setTyping(null)}
          />
        )}
      </Show>
      <Said path={props.path} />
    </div>
  );
}

export interface Choice {
  readonly value: string;
  readonly label: string;
}

/** One out of a few. What the file says stays in the list, though the page does not offer it. */
export function ChoiceField(props: {
  readonly label: string;
  readonly path: Path;
  /** A plain word is shown as it stands in the file: a letter. */
  readonly choices: readonly (Choice | string)[];
  /** The words for none; there is no such choice where it is absent. */
  readonly none?: string;
  /** What is chosen, where it is not simply the word at the path. */
  readonly chosen?: string;
  readonly onChosen?: (value: string) => void;
}): JSX.Element {
  const editor = useEditor();
  const control = useControl(() => props.path);
  const value = (): string => props.chosen ?? wordsAt(editor.draft(), props.path);
  const choices = (): readonly Choice[] => {
    const offered = props.choices.map((each) => (typeof each === 'string' ? { value: each, label: each } : each));
    const isOffered = value() === '' || offered.some((each) => each.value === value());
    return isOffered ? offered : [...offered, { value: value(), label: editorPage.asInFile(value()) }];
  };
  return (
    <div class="field">
      <label for={control.id()}>{props.label}</label>
      <select
        id={control.id()}
        data-place={control.place()}
        aria-invalid={control.isInvalid()}
        aria-describedby={control.said()}
        onChange={({ currentTarget: { value } }) => {
          if (props.onChosen) props.onChosen(value);
          else editor.set(props.path, value === '' ? null : value);
        }}
      >
        <Show when={props.none !== undefined || value() === ''}>
          <option value="" selected={value() === ''}>
            {props.none ?? editorPage.choose}
          </option>
        </Show>
        <For each={choices()}>
          {(choice) => (
            <option value={choice.value} selected={choice.value === value()}>
              {choice.label}
            </option>
          )}
        </For>
      </select>
      <Said path={props.path} />
    </div>
  );
}

/** Yes or no; no is what the file says by saying nothing. */
export function FlagField(props: { readonly label: string; readonly path: Path }): JSX.Element {
  const editor = useEditor();
  const control = useControl(() => props.path);
  return (
    <div class="field flag">
      <label>
        <input
          type="checkbox"
          id={control.id()}
          data-place={control.place()}
          checked={at(editor.draft(), props.path) === true}
          aria-describedby={control.said()}
          onChange={(event) => editor.set(props.path, event.currentTarget.checked ? true : null)}
        />
        <span>{props.label}</span>
      </label>
      <Said path={props.path} />
    </div>
  );
}

/** A value with its unit. The unit chosen last stays while there is no value yet. */
export function QuantityField<K extends Kind>(props: {
  readonly label: string;
  readonly path: Path;
  readonly of: K;
  /** Where another quantity stands whose unit is likely meant. */
  readonly like?: Path;
}): JSX.Element {
  const editor = useEditor();
  const control = useControl(() => props.path);
  const units = untrack(() => unitsOf(props.of));
  const [chosen, setChosen] = createSignal<string | null>(null);
  const unitAt = (path: Path): string => wordsAt(editor.draft(), [...path, 'unit']);
  const unit = (): string =>
    unitAt(props.path) || (chosen() ?? ((props.like && unitAt(props.like)) || (units[0] ?? '')));
  const type = (typed: string): void => {
    const value = typed.trim();
    const [path, now] = [props.path, unit()];
    editor.edit(
      (draft) => (value === '' ? take(draft, path) : put(draft, path, { value, unit: now })),
      control.place(),
    );
    setChosen(now);
  };
  const choose = (next: string): void => {
    setChosen(next);
    if (at(editor.draft(), props.path) !== undefined) editor.set([...props.path, 'unit'], next);
  };
  return (
    <div class="field quantity">
      <label for={control.id()}>{props.label}</label>
      <div>
        <input
          id={control.id()}
          data-place={control.place()}
          value={words.show(at(editor.draft(), [...props.path, 'value']))}
          inputmode="decimal"
          aria-invalid={control.isInvalid()}
          aria-describedby={control.said()}
          onInput={(event) => type(event.currentTarget.value)}
        />
        <select aria-label={editorPage.unitOf(props.label)} onChange={(event) => choose(event.currentTarget.value)}>
          <For each={units.includes(unit() as never) ? units : [unit(), ...units]}>
            {(each) => (
              <option value={each} selected={each === unit()}>
                {each}
              </option>
            )}
          </For>
        </select>
      </div>
      <Said path={props.path} />
    </div>
  );
}
