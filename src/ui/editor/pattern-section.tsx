import { createMemo, Match, Show, Switch, type JSX } from 'solid-js';
import { sayOrder } from '../../language/say-order.ts';
import { at, type Json, type Path, put, wordsAt } from '../../procedure/edit/draft.ts';
import { type PatternPreview, previewPattern } from '../../procedure/edit/findings.ts';
import { addPattern } from '../../procedure/edit/things.ts';
import { whole, wholeNumbers } from '../../procedure/edit/typed.ts';
import { layoutOfShape, ORDER_KINDS, orderOfKind, SHAPES } from '../../procedure/edit/variants.ts';
import { procedureForm } from '../../words/procedure-form.ts';
import { PatternMap } from '../parts/pattern-map.tsx';
import { choicesFrom, choicesOf } from './choices.ts';
import { useEditor } from './editor.ts';
import { type Choice, ChoiceField, Field } from './fields.tsx';
import { FastenerTable } from './fastener-table.tsx';
import { Members } from './members.tsx';
import { place } from '../../words/place.ts';
import { places } from './places.ts';
import { SayButton } from './say-button.tsx';

/** The fasteners: where they sit, which numbers they have, in which order they are worked. */
export function PatternSection(): JSX.Element {
  return (
    <section aria-labelledby="patterns">
      <h2 id="patterns">{procedureForm.pattern.title}</h2>
      <Members list={['patterns']} one="pattern" onAdd={addPattern}>
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
          <Field label={procedureForm.pattern.name} path={inside('name')} />
          <ChoiceField
            label={procedureForm.pattern.fastener}
            path={inside('fastener')}
            choices={choicesFrom(['bolt', 'nut', 'screw', 'stud'], procedureForm.pattern.fasteners)}
          />
          <Field label={procedureForm.pattern.thread} path={inside('thread')} hint="M8" />
          <Field
            label={procedureForm.pattern.threadCondition}
            path={inside('threadCondition')}
            hint={procedureForm.pattern.cleanAndDry}
          />
          <Show when={seals().length > 0}>
            <ChoiceField
              label={procedureForm.pattern.seal}
              path={inside('seal')}
              choices={seals()}
              none={procedureForm.pattern.noSeal}
            />
          </Show>
        </div>
        <LayoutFields path={props.path} />
        <OrderFields path={props.path} />
        <FastenerTable path={props.path} />
      </div>
      <Drawing
        name={wordsAt(props.pattern, ['name']) || procedureForm.pattern.unnamed}
        label={wordsAt(props.pattern, ['fastener']) || place.anyFastener}
        preview={preview()}
      />
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
        label={procedureForm.layout.shape}
        path={inside('shape')}
        choices={choicesFrom(SHAPES, procedureForm.layout.shapes)}
        onChosen={(chosen) => {
          const path = layout();
          editor.edit((draft) => put(draft, path, layoutOfShape(chosen, at(draft, path))));
        }}
      />
      <Switch>
        <Match when={shape() === 'ring'}>
          <Field label={procedureForm.layout.count} path={inside('count')} notation={whole} numeric />
        </Match>
        <Match when={shape() === 'double ring'}>
          <Field label={procedureForm.layout.outer} path={inside('outer')} notation={whole} numeric />
          <Field label={procedureForm.layout.inner} path={inside('inner')} notation={whole} numeric />
        </Match>
        <Match when={shape() === 'rectangle'}>
          <Field label={procedureForm.layout.columns} path={inside('columns')} notation={whole} numeric />
          <Field label={procedureForm.layout.rows} path={inside('rows')} notation={whole} numeric />
          <ChoiceField
            label={procedureForm.layout.fill}
            path={inside('fill')}
            choices={choicesFrom(['edge', 'grid'], procedureForm.layout.fills)}
          />
        </Match>
        <Match when={shape() === 'free'}>
          <Field label={procedureForm.layout.places} path={inside('places')} notation={places} lines={6} />
        </Match>
      </Switch>
      <Show when={shape() === 'ring' || shape() === 'double ring'}>
        <Field label={procedureForm.layout.startAngle} path={inside('startAngle')} hint="0" numeric />
      </Show>
      <Show when={shape() !== 'free'}>
        <ChoiceField
          label={procedureForm.layout.direction}
          path={inside('direction')}
          choices={choicesFrom(['clockwise', 'counter-clockwise'], procedureForm.layout.directions)}
          none={procedureForm.layout.usualDirection}
        />
      </Show>
      <Field label={procedureForm.layout.numbers} path={inside('numbers')} notation={wholeNumbers} hint="1, 2, 3, …" />
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
        label={procedureForm.order.kind}
        path={[...order(), 'kind']}
        choices={choicesFrom(ORDER_KINDS, procedureForm.order.kinds)}
        onChosen={(chosen) => {
          const path = order();
          editor.edit((draft) => put(draft, path, orderOfKind(chosen, at(draft, path))));
        }}
      />
      <Show when={kind() === 'explicit'}>
        <Field
          label={procedureForm.order.numbers}
          path={[...order(), 'numbers']}
          notation={wholeNumbers}
          hint="1, 7, 4, 10"
        />
      </Show>
      <Show when={kind() === 'grouped'}>
        <Field label={procedureForm.order.size} path={[...order(), 'size']} notation={whole} numeric />
      </Show>
    </div>
  );
}

/** The pattern as it is typed, with the order as a line through it, in figures and by voice. */
function Drawing(props: {
  readonly name: string;
  /** What its fasteners are called. */
  readonly label: string;
  readonly preview: PatternPreview | null;
}): JSX.Element {
  const order = (): readonly number[] => props.preview?.groups?.flat() ?? [];
  return (
    <figure class="drawing">
      <div class="picture">
        <Show when={props.preview} fallback={<p>{procedureForm.pattern.notDrawn}</p>}>
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
        <p class="order">{order().length > 0 ? order().join(' → ') : procedureForm.order.none}</p>
        <SayButton
          label={procedureForm.order.sayOf(props.name)}
          texts={() => [sayOrder(props.name, props.label, order())]}
        >
          {procedureForm.order.say}
        </SayButton>
      </figcaption>
    </figure>
  );
}
