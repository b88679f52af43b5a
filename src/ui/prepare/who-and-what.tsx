/** Who works, by what data, on which unit. */
import { For, Show, type JSX } from 'solid-js';
import { questionsOf } from '../../session/preparation/needed.ts';
import { preparePage } from '../../words/prepare-page.ts';
import { startScreen } from '../../words/start-screen.ts';
import { Choice, Entry, Findings, idOf, Section, Tick } from './field.tsx';
import type { Sheet } from './sheet.ts';

export function PeopleSection(props: { readonly sheet: Sheet }): JSX.Element {
  return (
    <Section name="people" title={preparePage.people.title}>
      <p>
        <Show when={props.sheet.procedure.persons} fallback={preparePage.people.needsUnknown}>
          {(persons) => <>{preparePage.people.needs(persons())}</>}
        </Show>
      </p>
      <div class="entries" id={idOf('people')} tabindex="-1">
        <Entry
          field="people"
          kind="name"
          label={preparePage.people.mechanic}
          value={props.sheet.entered.mechanic}
          onValue={(mechanic) => props.sheet.change({ mechanic })}
        />
        <Entry
          field="people"
          kind="name"
          label={preparePage.people.second}
          value={props.sheet.entered.second}
          onValue={(second) => props.sheet.change({ second })}
        />
        <Entry
          field="people"
          kind="name"
          label={preparePage.people.helpers}
          value={props.sheet.entered.helpers}
          onValue={(helpers) => props.sheet.change({ helpers })}
        />
      </div>
      <Findings field="people" all={props.sheet.findings} />
      <Tick id="sound" isOn={props.sheet.isSoundAgreed} onChange={(isOn) => props.sheet.agreeToSound(isOn)}>
        {startScreen.soundAgreed}
      </Tick>
    </Section>
  );
}

export function DataSection(props: { readonly sheet: Sheet }): JSX.Element {
  const source = () => props.sheet.procedure.source;
  return (
    <Section name="data" title={preparePage.data.title}>
      <dl class="facts">
        <dt>{preparePage.data.document}</dt>
        <dd>{source().document}</dd>
        <dt>{preparePage.data.revision}</dt>
        <dd>{source().revision}</dd>
        <dt>{preparePage.data.issued}</dt>
        <dd>{source().issued ?? preparePage.data.notStated}</dd>
      </dl>
      <Tick
        id={idOf('approved data')}
        isOn={props.sheet.entered.isCurrentData}
        describedBy="approved data"
        onChange={(isCurrentData) => props.sheet.change({ isCurrentData })}
      >
        {preparePage.data.isCurrent}
      </Tick>
      <Findings field="approved data" all={props.sheet.findings} />
    </Section>
  );
}

const ANSWERS = ['yes', 'no', 'later'] as const;
type Answer = (typeof ANSWERS)[number];

export function QuestionsSection(props: { readonly sheet: Sheet }): JSX.Element {
  const answered = (id: string): Answer => {
    const is = props.sheet.entered.conditions.get(id);
    return is === undefined ? 'later' : is ? 'yes' : 'no';
  };
  const answer = (id: string, value: Answer): void => {
    const others = [...props.sheet.entered.conditions].filter(([key]) => key !== id);
    props.sheet.change({ conditions: new Map(value === 'later' ? others : [...others, [id, value === 'yes']]) });
  };
  return (
    <Show when={questionsOf(props.sheet.procedure).length > 0}>
      <Section name="questions" title={preparePage.unit.title}>
        <For each={questionsOf(props.sheet.procedure)}>
          {({ id, question }) => (
            <Choice
              name={`question-${id}`}
              legend={question}
              options={ANSWERS.map((value) => ({ value, words: preparePage.unit.answers[value] }))}
              chosen={answered(id)}
              onChoose={(value) => answer(id, value)}
            />
          )}
        </For>
      </Section>
    </Show>
  );
}
