import { Show, createSignal, onCleanup, onMount, type JSX } from 'solid-js';
import { askToPersist, isPersisted, LITTLE_ROOM, roomLeft, type Persistence } from '../../storage/persistence.ts';
import { keptHere } from '../../words/kept-here.ts';
import { Trouble } from './trouble.tsx';

/** How often the room is looked at, in milliseconds. */
const LOOK_EVERY = 60_000;

/** Whether the browser keeps what is written, and whether the room for it runs out. */
export function StorageLine(props: {
  /** Asks the browser to keep it: at the start of work, where it is a person's wish. */
  readonly asks: boolean;
  /** Told once, when there is little room. */
  readonly onLittleRoom?: (text: string) => void;
}): JSX.Element {
  const [persistence, setPersistence] = createSignal<Persistence | null>(null);
  const [room, setRoom] = createSignal<number | null>(null);
  const isLittle = (): boolean => (room() ?? Infinity) < LITTLE_ROOM;
  async function look(): Promise<void> {
    const wasLittle = isLittle();
    setRoom(await roomLeft());
    if (isLittle() && !wasLittle) props.onLittleRoom?.(keptHere.roomRunsOut);
  }
  onMount(() => {
    void (props.asks ? askToPersist() : isPersisted()).then(setPersistence);
    void look();
    const timer = setInterval(() => void look(), LOOK_EVERY);
    onCleanup(() => clearInterval(timer));
  });
  return (
    <>
      <Show when={persistence()}>{(answer) => <p class="note storage">{keptHere.persistence[answer()]}</p>}</Show>
      <Trouble text={isLittle() && keptHere.littleRoom(Math.floor((room() ?? 0) / 1e6))} />
    </>
  );
}
