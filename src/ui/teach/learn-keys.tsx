import { For, Show, createSignal, onCleanup, type JSX } from 'solid-js';
import { isBindable } from '../../gesture/bindings.ts';
import { MEDIA_KEYS, watchMediaButtons } from '../../gesture/media-buttons.ts';
import { teachScreen } from '../../words/teach-screen.ts';

const COUNTS = [1, 2, 3] as const;

/** Learns which keys the switches send: each is pressed once, in turn. */
export function LearnKeys(props: { readonly onLearned: (keys: readonly string[]) => void }): JSX.Element {
  const [wanted, setWanted] = createSignal(0);
  const [keys, setKeys] = createSignal<readonly string[]>([]);
  const [remark, setRemark] = createSignal('');
  let stop = (): void => undefined;
  onCleanup(() => stop());

  function begin(count: number): void {
    stop();
    setWanted(count);
    setKeys([]);
    setRemark('');
    const onKey = (event: KeyboardEvent): void => {
      // The way out for who has no switch at hand; and the way through the page stays open.
      if (event.key === 'Escape') return end();
      if (event.key === 'Tab' || event.repeat) return;
      event.preventDefault();
      event.stopImmediatePropagation();
      take(event.key);
    };
    window.addEventListener('keydown', onKey, { capture: true });
    const stopMedia = watchMediaButtons(MEDIA_KEYS, window, take);
    stop = () => {
      window.removeEventListener('keydown', onKey, { capture: true });
      stopMedia();
    };
  }

  function take(key: string): void {
    if (keys().includes(key)) return void setRemark(teachScreen.learning.taughtAlready(key));
    if (!isBindable(key)) return void setRemark(teachScreen.learning.notBindable(key));
    setRemark('');
    setKeys([...keys(), key]);
    if (keys().length < wanted()) return;
    const learned = keys();
    end();
    props.onLearned(learned);
  }

  function end(): void {
    stop();
    stop = () => undefined;
    setWanted(0);
  }

  return (
    <div class="learn">
      <div class="choices">
        <For each={COUNTS}>
          {(count) => (
            <button type="button" onClick={() => begin(count)}>
              {teachScreen.learning.begin[count]}
            </button>
          )}
        </For>
      </div>
      <p role="status" class="now">
        <Show when={wanted() > 0} fallback={teachScreen.learning.withOne}>
          <b>{teachScreen.learning.pressNow(keys().length + 1, wanted())}</b> {teachScreen.learning.escapeEnds}{' '}
          {remark()}
        </Show>
      </p>
    </div>
  );
}
