import { Show, createSignal, type JSX } from 'solid-js';
import { teachScreen } from '../../words/teach-screen.ts';
import { messageOf } from '../message.ts';

/** Whether something is kept for a person, and the way to have it forgotten. */
export function KeptLine(props: {
  readonly person: string;
  readonly isKept: boolean;
  /** What holds where nothing is kept. */
  readonly otherwise: string;
  /** @throws where it cannot be deleted */
  readonly onForget: () => Promise<void>;
}): JSX.Element {
  const [trouble, setTrouble] = createSignal<string | null>(null);
  const forget = (): void =>
    void props
      .onForget()
      .then(() => setTrouble(null))
      .catch((error: unknown) => setTrouble(teachScreen.notDeleted(messageOf(error))));
  return (
    <p class="kept" role="status">
      <Show when={props.isKept} fallback={props.otherwise}>
        {teachScreen.keptFor(props.person)}{' '}
        <button type="button" onClick={forget}>
          {teachScreen.forget}
        </button>
      </Show>
      <Show when={trouble()}>{(text) => <strong class="trouble">{text()}</strong>}</Show>
    </p>
  );
}
