import { Show, createSignal, type JSX } from 'solid-js';
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
      .catch((error: unknown) => setTrouble(`It could not be deleted: ${messageOf(error)}`));
  return (
    <p class="kept" role="status">
      <Show when={props.isKept} fallback={props.otherwise}>
        Kept on this device for {props.person || 'anybody'}.{' '}
        <button type="button" onClick={forget}>
          Forget it
        </button>
      </Show>
      <Show when={trouble()}>{(text) => <strong class="trouble">{text()}</strong>}</Show>
    </p>
  );
}
