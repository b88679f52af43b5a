import { Show, type JSX } from 'solid-js';
import type { Meaning } from '../../session/intent.ts';
import { people } from '../../words/people.ts';
import type { WorkView } from '../view.ts';

/** Who works and who reads back, always in the same place. Names are typed: no recogniser knows them. */
export function PeoplePanel(props: {
  readonly view: Pick<WorkView, 'people' | 'handingOver'>;
  readonly onMeaning: (meaning: Meaning) => void;
}): JSX.Element {
  return (
    <section class="people" aria-label={people.whoTakesPart}>
      <NameForm
        who={people.mechanic}
        name={props.view.people.mechanic}
        label={people.whoTakesOver}
        action={people.takeOver}
        isOpen={props.view.handingOver}
        onName={(name) => props.onMeaning({ kind: 'take over', name })}
      />
      <NameForm
        who={people.secondPerson}
        name={props.view.people.second ?? people.nobody}
        label={people.whoJoins}
        action={people.join}
        isOpen={true}
        onName={(name) => props.onMeaning({ kind: 'second person', name })}
        onLeave={
          props.view.people.second === null ? null : () => props.onMeaning({ kind: 'second person', name: null })
        }
      />
    </section>
  );
}

function NameForm(props: {
  readonly who: string;
  readonly name: string;
  readonly label: string;
  readonly action: string;
  readonly isOpen: boolean;
  readonly onName: (name: string) => void;
  readonly onLeave?: (() => void) | null;
}): JSX.Element {
  return (
    <form
      class="typed"
      onSubmit={(event) => {
        event.preventDefault();
        const field = event.currentTarget.elements.namedItem('name');
        if (!props.isOpen || !(field instanceof HTMLInputElement)) return;
        props.onName(field.value);
        field.value = '';
      }}
    >
      <p>
        <b>{props.who}</b> {props.name}
      </p>
      <label>
        {props.label}
        <input name="name" autocomplete="off" />
      </label>
      <button type="submit" aria-disabled={!props.isOpen}>
        {props.action}
      </button>
      <Show when={props.onLeave !== undefined}>
        <button type="button" aria-disabled={!props.onLeave} onClick={() => props.onLeave?.()}>
          {people.leave}
        </button>
      </Show>
    </form>
  );
}
