import { Show, createSignal, type JSX } from 'solid-js';
import { LONGEST_NAME } from '../../session/people.ts';
import { people } from '../../words/people.ts';

interface Props {
  /** Null where nobody is the second person. */
  readonly name: string | null;
  /** Whether a window is there that takes part in it. */
  readonly isHeard: boolean;
  readonly onLeave: () => void;
}

/** Who the second person is. Leaving has its own place: a second tap on "Join" never lands on it. */
export function SecondPerson(props: Props): JSX.Element {
  const may = (): boolean => props.name !== null && props.isHeard;
  return (
    <header class="second-person">
      <p>{people.secondPersonIs(<b>{props.name ?? people.nobodyYet}</b>)}</p>
      <button
        type="button"
        aria-disabled={!may()}
        onClick={() => {
          if (may()) props.onLeave();
        }}
      >
        {people.leave}
      </button>
    </header>
  );
}

interface JoinProps {
  readonly mechanic: string;
  readonly isHeard: boolean;
  readonly onJoin: (name: string) => void;
}

/** Names are typed: no recogniser knows them. Whether one may witness is for the session to say. */
export function JoinForm(props: JoinProps): JSX.Element {
  const [name, setName] = createSignal('');
  const may = (): boolean => name().trim() !== '' && props.isHeard;
  return (
    <form
      class="join"
      onSubmit={(event) => {
        event.preventDefault();
        if (may()) props.onJoin(name().trim());
      }}
    >
      <label>
        {people.yourName}
        <input
          autocomplete="name"
          maxLength={LONGEST_NAME}
          value={name()}
          onInput={(event) => setName(event.currentTarget.value)}
        />
      </label>
      <button type="submit" classList={{ primary: may() }} aria-disabled={!may()}>
        {people.join}
      </button>
      <Show when={props.mechanic}>
        <p class="note">{people.mechanicIs(props.mechanic)}</p>
      </Show>
    </form>
  );
}
