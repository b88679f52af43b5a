import { createMemo, For, Match, Show, Switch, type JSX } from 'solid-js';
import { sayPasses } from '../../language/say-order.ts';
import { at, type Path, put, wordsAt } from '../../procedure/edit/draft.ts';
import { previewPasses } from '../../procedure/edit/findings.ts';
import { addPass } from '../../procedure/edit/things.ts';
import { wholeNumbers } from '../../procedure/edit/typed.ts';
import { PASS_KINDS, passOfKind } from '../../procedure/edit/variants.ts';
import { type Torque, toWritten } from '../../units/index.ts';
import type { PlannedPass } from '../../tightening/index.ts';
import { tightenForm } from '../../words/tighten-form.ts';
import { choicesFrom, choicesOf } from './choices.ts';
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
        <ChoiceField
          label={tightenForm.pattern}
          path={inside('pattern')}
          choices={choicesOf(editor.draft(), 'patterns')}
        />
        <ChoiceField label={tightenForm.tool} path={inside('tool')} choices={choicesOf(editor.draft(), 'tools')} />
        <Show when={choicesOf(editor.draft(), 'adapters').length > 0}>
          <ChoiceField
            label={tightenForm.adapter}
            path={inside('adapter')}
            choices={choicesOf(editor.draft(), 'adapters')}
            none={tightenForm.bareWrench}
          />
        </Show>
        <ChoiceField
          label={tightenForm.confirm}
          path={inside('confirm')}
          choices={choicesFrom(['each', 'by going on', 'witness each'], tightenForm.confirms)}
          none={tightenForm.usualConfirm}
        />
        <QuantityField label={tightenForm.finalTorque} path={target()} of="torque" />
        <QuantityField
          label={tightenForm.acceptedFrom}
          path={inside('final', 'window', 'min')}
          of="torque"
          like={target()}
        />
        <QuantityField
          label={tightenForm.acceptedTo}
          path={inside('final', 'window', 'max')}
          of="torque"
          like={target()}
        />
      </div>
      <Members list={inside('passes')} one="pass" onAdd={(draft) => addPass(draft, props.index)}>
        {(path) => <PassForm path={path} />}
      </Members>
      <Planned planned={planned()} title={wordsAt(editor.draft(), inside('title'))} />
    </>
  );
}

function PassForm(props: { readonly path: Path }): JSX.Element {
  const editor = useEditor();
  const kind = (): string => wordsAt(editor.draft(), [...props.path, 'kind']);
  const inside = (...names: readonly string[]): Path => [...props.path, ...names];
  const target = (): Path => inside('target');
  return (
    <div class="grid">
      <ChoiceField
        label={tightenForm.pass.kind}
        path={inside('kind')}
        choices={choicesFrom(PASS_KINDS, tightenForm.pass.kinds)}
        onChosen={(chosen) => {
          const path = props.path;
          editor.edit((draft) => put(draft, path, passOfKind(chosen, at(draft, path))));
        }}
      />
      <Field label={tightenForm.pass.name} path={inside('name')} />
      <Switch>
        <Match when={kind() === 'percent'}>
          <Field label={tightenForm.pass.percent} path={inside('percent')} numeric />
        </Match>
        <Match when={kind() === 'torque'}>
          <QuantityField label={tightenForm.pass.torque} path={target()} of="torque" />
          <QuantityField label={tightenForm.pass.from} path={inside('window', 'min')} of="torque" like={target()} />
          <QuantityField label={tightenForm.pass.to} path={inside('window', 'max')} of="torque" like={target()} />
        </Match>
        <Match when={kind() === 'angle'}>
          <QuantityField label={tightenForm.pass.angle} path={inside('angle')} of="angle" />
          <QuantityField label={tightenForm.pass.tolerance} path={inside('tolerance')} of="angle" />
        </Match>
      </Switch>
      <Field label={tightenForm.pass.only} path={inside('only')} notation={wholeNumbers} hint={tightenForm.pass.all} />
    </div>
  );
}

function valueWords(pass: PlannedPass): string {
  if (pass.target === null) return pass.name;
  const { target, window } = pass;
  const plain = (torque: Torque): string => `${toWritten(torque).value} ${torque.unit}`;
  return tightenForm.planned.value(pass.name, plain(target), toWritten(window.min).value, plain(window.max));
}

function Planned(props: { readonly planned: readonly PlannedPass[] | null; readonly title: string }): JSX.Element {
  return (
    <div class="planned">
      <h3>{tightenForm.planned.title}</h3>
      <ol>
        <For each={props.planned ?? []} fallback={<li>{tightenForm.planned.nothing}</li>}>
          {(pass) => (
            <li>
              {valueWords(pass)} <span class="order">({pass.order.join(' → ')})</span>
            </li>
          )}
        </For>
      </ol>
      <SayButton
        label={tightenForm.planned.sayOf(props.title || tightenForm.planned.thisStep)}
        texts={() => sayPasses(props.planned ?? [])}
      >
        {tightenForm.planned.say}
      </SayButton>
    </div>
  );
}
