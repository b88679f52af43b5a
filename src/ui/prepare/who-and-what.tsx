/** Who works, by what data, on which unit. */
import { For, Show, type JSX } from 'solid-js';
import { questionsOf } from '../../session/preparation/needed.ts';
import { Choice, Entry, Findings, idOf, Section, Tick } from './field.tsx';
import type { Sheet } from './sheet.ts';

export function PeopleSection(props: { readonly sheet: Sheet }): JSX.Element {
  const persons = () => props.sheet.procedure.persons;
  return (
    <Section name="people" title="People">
      <p>
        {persons() === undefined
          ? 'The procedure does not say how many it needs.'
          : `The procedure needs ${persons()}.`}
      </p>
      <div class="entries" id={idOf('people')} tabindex="-1">
        <Entry
          field="people"
          kind="name"
          label="Mechanic: does the work"
          value={props.sheet.entered.mechanic}
          onValue={(mechanic) => props.sheet.change({ mechanic })}
        />
        <Entry
          field="people"
          kind="name"
          label="Second person: reads back and witnesses"
          value={props.sheet.entered.second}
          onValue={(second) => props.sheet.change({ second })}
        />
        <Entry
          field="people"
          kind="name"
          label="Helpers, with commas between"
          value={props.sheet.entered.helpers}
          onValue={(helpers) => props.sheet.change({ helpers })}
        />
      </div>
      <Findings field="people" all={props.sheet.findings} />
    </Section>
  );
}

export function DataSection(props: { readonly sheet: Sheet }): JSX.Element {
  const source = () => props.sheet.procedure.source;
  return (
    <Section name="data" title="Approved data">
      <dl class="facts">
        <dt>Document</dt>
        <dd>{source().document}</dd>
        <dt>Revision</dt>
        <dd>{source().revision}</dd>
        <dt>Issued</dt>
        <dd>{source().issued ?? 'not stated'}</dd>
      </dl>
      <Tick
        id={idOf('approved data')}
        isOn={props.sheet.entered.isCurrentData}
        describedBy="approved data"
        onChange={(isCurrentData) => props.sheet.change({ isCurrentData })}
      >
        I compared them with the register: this is the current approved data.
      </Tick>
      <Findings field="approved data" all={props.sheet.findings} />
    </Section>
  );
}

const ANSWERS = [
  { value: 'yes', words: 'Yes' },
  { value: 'no', words: 'No' },
  { value: 'later', words: 'Not known yet: ask in the work' },
] as const;

export function QuestionsSection(props: { readonly sheet: Sheet }): JSX.Element {
  const answered = (id: string): 'yes' | 'no' | 'later' => {
    const is = props.sheet.entered.conditions.get(id);
    return is === undefined ? 'later' : is ? 'yes' : 'no';
  };
  const answer = (id: string, value: 'yes' | 'no' | 'later'): void => {
    const others = [...props.sheet.entered.conditions].filter(([key]) => key !== id);
    props.sheet.change({ conditions: new Map(value === 'later' ? others : [...others, [id, value === 'yes']]) });
  };
  return (
    <Show when={questionsOf(props.sheet.procedure).length > 0}>
      <Section name="questions" title="The unit">
        <For each={questionsOf(props.sheet.procedure)}>
          {({ id, question }) => (
            <Choice
              name={`question-${id}`}
              legend={question}
              options={ANSWERS}
              chosen={answered(id)}
              onChoose={(value) => answer(id, value)}
            />
          )}
        </For>
      </Section>
    </Show>
  );
}
