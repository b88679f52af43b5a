import { createMemo, Match, Show, Switch, type JSX } from 'solid-js';
import { sayOrder } from '../../language/say-order.ts';
import { at, type Json, type Path, put, wordsAt } from '../../procedure/edit/draft.ts';
import { type PatternPreview, previewPattern } from '../../procedure/edit/findings.ts';
import { addPattern } from '../../procedure/edit/things.ts';
import { whole, wholeNumbers } from '../../procedure/edit/typed.ts';
import { layoutOfShape, ORDER_KINDS, orderOfKind, SHAPES } from '../../procedure/edit/variants.ts';
import { PatternMap } from '../parts/pattern-map.tsx';
import { choicesOf } from './choices.ts';
import { useEditor } from './editor.ts';
import { type Choice, ChoiceField, Field } from './fields.tsx';
import { FastenerTable } from './fastener-table.tsx';
import { Members } from './members.tsx';
import { places } from './places.ts';
import { SayButton } from './say-button.tsx';

/** The fasteners: where they sit, which numbers they have, in which order they are worked. */
export function PatternSection(): JSX.Element {
  return (
    <section aria-labelledby="patterns">
      <h2 id="patterns">Fastener patterns</h2>
      <Members list={['patterns']} one="Pattern" onAdd={addPattern}>
        {(path, pattern) => <PatternForm path={path} pattern={pattern()} />}
      </Members>
    </section>
  );
}

function PatternForm(props: { readonly path: Path; readonly pattern: Json }): JSX.Element {
  const editor = useEditor();
  const preview = createMemo(() => previewPattern(props.pattern));
  const seals = (): readonly Choice[] => choicesOf(editor.draft(), 'seals');
  const inside = (...names: readonly string[]): Path => [...props.path, ...names];
  return (
    <div class="with-drawing">
      <div>
        <div class="grid">
          <Field label="Name of the pattern" path={inside('name')} />
          <ChoiceField label="Fasteners" path={inside('fastener')} choices={['bolt', 'nut', 'screw', 'stud']} />
          <Field label="Thread" path={inside('thread')} hint="M8" />
          <Field label="Thread condition" path={inside('threadCondition')} hint="clean and dry" />
          <Show when={seals().length > 0}>
            <ChoiceField label="Seal under it" path={inside('seal')} choices={seals()} none="no seal" />
          </Show>
        </div>
        <LayoutFields path={props.path} />
        <OrderFields path={props.path} />
        <FastenerTable path={props.path} />
      </div>
      <Drawing name={wordsAt(props.pattern, ['name']) || 'Pattern'} preview={preview()} />
    </div>
  );
}

function LayoutFields(props: { readonly path: Path }): JSX.Element {
  const editor = useEditor();
  const layout = (): Path => [...props.path, 'layout'];
  const shape = (): string => wordsAt(editor.draft(), [...layout(), 'shape']);
  const inside = (name: string): Path => [...layout(), name];
  return (
    <div class="grid">
      <ChoiceField
        label="Shape"
        path={inside('shape')}
        choices={SHAPES}
        onChosen={(chosen) => {
          const path = layout();
          editor.edit((draft) => put(draft, path, layoutOfShape(chosen, at(draft, path))));
        }}
      />
      <Switch>
        <Match when={shape() === 'ring'}>
          <Field label="How many" path={inside('count')} notation={whole} numeric />
        </Match>
        <Match when={shape() === 'double ring'}>
          <Field label="In the outer ring" path={inside('outer')} notation={whole} numeric />
          <Field label="In the inner ring" path={inside('inner')} notation={whole} numeric />
        </Match>
        <Match when={shape() === 'rectangle'}>
          <Field label="Columns" path={inside('columns')} notation={whole} numeric />
          <Field label="Rows" path={inside('rows')} notation={whole} numeric />
          <ChoiceField label="Filled" path={inside('fill')} choices={['edge', 'grid']} />
        </Match>
        <Match when={shape() === 'free'}>
          <Field label="Places, a line each: x, y" path={inside('places')} notation={places} lines={6} />
        </Match>
      </Switch>
      <Show when={shape() === 'ring' || shape() === 'double ring'}>
        <Field label="First one at, degrees from the top" path={inside('startAngle')} hint="0" numeric />
      </Show>
      <Show when={shape() !== 'free'}>
        <ChoiceField
          label="Counted"
          path={inside('direction')}
          choices={['clockwise', 'counter-clockwise']}
          none="clockwise, unless the part says otherwise"
        />
      </Show>
      <Field label="Numbers on the part" path={inside('numbers')} notation={wholeNumbers} hint="1, 2, 3, …" />
    </div>
  );
}

function OrderFields(props: { readonly path: Path }): JSX.Element {
  const editor = useEditor();
  const order = (): Path => [...props.path, 'order'];
  const kind = (): string => wordsAt(editor.draft(), [...order(), 'kind']);
  return (
    <div class="grid">
      <ChoiceField
        label="Order of tightening"
        path={[...order(), 'kind']}
        choices={ORDER_KINDS.map((value) => ({ value, label: ORDER_WORDS[value] ?? value }))}
        onChosen={(chosen) => {
          const path = order();
          editor.edit((draft) => put(draft, path, orderOfKind(chosen, at(draft, path))));
        }}
      />
      <Show when={kind() === 'explicit'}>
        <Field label="The manual's order" path={[...order(), 'numbers']} notation={wholeNumbers} hint="1, 7, 4, 10" />
      </Show>
      <Show when={kind() === 'grouped'}>
        <Field label="Neighbours in a group" path={[...order(), 'size']} notation={whole} numeric />
      </Show>
    </div>
  );
}

const ORDER_WORDS: Readonly<Partial<Record<string, string>>> = {
  crosswise: 'crosswise',
  spiral: 'spiral, from the middle outwards',
  circular: 'round the pattern',
  explicit: "the manual's own list",
  grouped: 'crosswise in groups',
};

/** The pattern as it is typed, with the order as a line through it, in figures and by voice. */
function Drawing(props: { readonly name: string; readonly preview: PatternPreview | null }): JSX.Element {
  const order = (): readonly number[] => props.preview?.groups?.flat() ?? [];
  return (
    <figure class="drawing">
      <div class="picture">
        <Show when={props.preview} fallback={<p>It is drawn as soon as its places are known.</p>}>
          {(preview) => (
            <PatternMap
              map={{
                name: props.name,
                positions: preview().pattern.positions.map((position) => ({
                  ...position,
                  standing: position.number === order()[0] ? 'next' : 'open',
                })),
              }}
              order={order()}
            />
          )}
        </Show>
      </div>
      <figcaption>
        <p class="order">{order().length > 0 ? order().join(' → ') : 'No order fits it yet.'}</p>
        <SayButton label={`Say the order of ${props.name}`} texts={() => [sayOrder(props.name, order())]}>
          Say the order
        </SayButton>
      </figcaption>
    </figure>
  );
}
