import { createMemo, For, Match, Show, Switch, type JSX } from 'solid-js';
import { sayPasses } from '../../language/say-order.ts';
import { at, type Path, put, wordsAt } from '../../procedure/edit/draft.ts';
import { previewPasses } from '../../procedure/edit/findings.ts';
import { addPass } from '../../procedure/edit/things.ts';
import { wholeNumbers } from '../../procedure/edit/typed.ts';
import { PASS_KINDS, passOfKind } from '../../procedure/edit/variants.ts';
import { toWritten } from '../../units/index.ts';
import type { PlannedPass } from '../../tightening/index.ts';
import { choicesOf } from './choices.ts';
import { useEditor } from './editor.ts';
import { ChoiceField, Field, QuantityField } from './fields.tsx';
import { Members } from './members.tsx';
import { SayButton } from './say-button.tsx';

/** What is tightened, with what, to which value, in which passes, and what these come to. */
export function TightenForm(props: { readonly index: number }): JSX.Element {
  const editor = useEditor();
  const inside = (...names: readonly string[]): Path => ['steps', props.index, ...names];
  const target = (): Path => inside('final', 'target');
  const planned = createMemo(() => previewPasses(editor.draft(), props.index));
  return (
    <>
      <div class="grid">
        <ChoiceField label="Pattern" path={inside('pattern')} choices={choicesOf(editor.draft(), 'patterns')} />
        <ChoiceField label="Torque tool" path={inside('tool')} choices={choicesOf(editor.draft(), 'tools')} />
        <Show when={choicesOf(editor.draft(), 'adapters').length > 0}>
          <ChoiceField
            label="Adapter"
            path={inside('adapter')}
            choices={choicesOf(editor.draft(), 'adapters')}
            none="bare wrench"
          />
        </Show>
        <ChoiceField
          label="Each value is"
          path={inside('confirm')}
          choices={[
            { value: 'each', label: 'read back and confirmed' },
            { value: 'by going on', label: 'confirmed by going on' },
            { value: 'witness each', label: 'read by two people' },
          ]}
          none="read back and confirmed, as usual"
        />
        <QuantityField label="Final torque" path={target()} of="torque" />
        <QuantityField label="Accepted from" path={inside('final', 'window', 'min')} of="torque" like={target()} />
        <QuantityField label="Accepted to" path={inside('final', 'window', 'max')} of="torque" like={target()} />
      </div>
      <Members list={inside('passes')} one="Pass" onAdd={(draft) => addPass(draft, props.index)}>
        {(path) => <PassForm path={path} />}
      </Members>
      <Planned planned={planned()} title={wordsAt(editor.draft(), inside('title'))} />
    </>
  );
}

const PASS_WORDS: Readonly<Partial<Record<string, string>>> = {
  percent: 'per cent of the final torque',
  torque: 'a torque of its own',
  snug: 'snug by hand',
  angle: 'turned on by an angle',
  'circular check': 'checked round the pattern until none turns',
};

function PassForm(props: { readonly path: Path }): JSX.Element {
  const editor = useEditor();
  const kind = (): string => wordsAt(editor.draft(), [...props.path, 'kind']);
  const inside = (...names: readonly string[]): Path => [...props.path, ...names];
  const target = (): Path => inside('target');
  return (
    <div class="grid">
      <ChoiceField
        label="Kind of pass"
        path={inside('kind')}
        choices={PASS_KINDS.map((value) => ({ value, label: PASS_WORDS[value] ?? value }))}
        onChosen={(chosen) => {
          const path = props.path;
          editor.edit((draft) => put(draft, path, passOfKind(chosen, at(draft, path))));
        }}
      />
      <Field label="Name of the pass" path={inside('name')} />
      <Switch>
        <Match when={kind() === 'percent'}>
          <Field label="Per cent" path={inside('percent')} numeric />
        </Match>
        <Match when={kind() === 'torque'}>
          <QuantityField label="Torque" path={target()} of="torque" />
          <QuantityField label="From" path={inside('window', 'min')} of="torque" like={target()} />
          <QuantityField label="To" path={inside('window', 'max')} of="torque" like={target()} />
        </Match>
        <Match when={kind() === 'angle'}>
          <QuantityField label="Angle" path={inside('angle')} of="angle" />
          <QuantityField label="Tolerance" path={inside('tolerance')} of="angle" />
        </Match>
      </Switch>
      <Field label="Only these fasteners" path={inside('only')} notation={wholeNumbers} hint="all" />
    </div>
  );
}

function valueWords(pass: PlannedPass): string {
  if (pass.target === null) return pass.name;
  const { target, window } = pass;
  const [min, max] = [window.min, window.max].map((limit) => toWritten(limit).value);
  return `${pass.name}: ${toWritten(target).value} ${target.unit}, accepted ${min} to ${max} ${window.max.unit}`;
}

function Planned(props: { readonly planned: readonly PlannedPass[] | null; readonly title: string }): JSX.Element {
  return (
    <div class="planned">
      <h3>What the passes come to</h3>
      <ol>
        <For each={props.planned ?? []} fallback={<li>Nothing yet: a value or the pattern is missing.</li>}>
          {(pass) => (
            <li>
              {valueWords(pass)} <span class="order">({pass.order.join(' → ')})</span>
            </li>
          )}
        </For>
      </ol>
      <SayButton label={`Say the passes of ${props.title || 'this step'}`} texts={() => sayPasses(props.planned ?? [])}>
        Say the passes
      </SayButton>
    </div>
  );
}
