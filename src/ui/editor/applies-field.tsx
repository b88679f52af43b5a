import { Show, type JSX } from 'solid-js';
import { at, listAt, type Path, put, take, wordsAt } from '../../procedure/edit/draft.ts';
import { stepForm } from '../../words/step-form.ts';
import { useEditor } from './editor.ts';
import { type Choice, ChoiceField } from './fields.tsx';

/** On which answer about the unit a step is worked. Nothing where the procedure asks nothing. */
export function AppliesField(props: { readonly path: Path }): JSX.Element {
  const editor = useEditor();
  const applies = () => at(editor.draft(), props.path);
  const choices = (): readonly Choice[] =>
    listAt(editor.draft(), ['conditions']).flatMap((condition) => {
      const id = wordsAt(condition, ['id']);
      const question = wordsAt(condition, ['question']) || id;
      return ANSWERS.map((answer) => ({ value: `${id} ${answer}`, label: stepForm.onlyIf(answer, question) }));
    });
  const chosen = (): string => {
    const condition = wordsAt(applies(), ['condition']);
    return condition === '' ? '' : `${condition} ${at(applies(), ['is']) === false ? 'no' : 'yes'}`;
  };
  return (
    <Show when={choices().length > 0 || applies() !== undefined}>
      <ChoiceField
        label={stepForm.applies}
        path={props.path}
        choices={choices()}
        none={stepForm.always}
        chosen={chosen()}
        onChosen={(value) => {
          const [path, [condition = '', answer]] = [props.path, value.split(' ')];
          editor.edit((draft) =>
            condition === '' ? take(draft, path) : put(draft, path, { condition, is: answer === 'yes' }),
          );
        }}
      />
    </Show>
  );
}

const ANSWERS = ['yes', 'no'] as const;
