import { Show, createMemo, type JSX } from 'solid-js';
import { microphone } from '../../words/microphone.ts';
import { isBad, soundInWords, type HeardSound } from '../heard-sound.ts';

/** Quietest level that the meter shows, in dBFS. */
const FLOOR = -70;

const partOf = (dBFS: number): number => Math.max(0, Math.min(1, (dBFS - FLOOR) / -FLOOR));

/** How loud it is now, with a mark at the background. */
export function LevelMeter(props: { readonly level: number; readonly noise: number | null }): JSX.Element {
  return (
    <svg class="level" viewBox="0 0 100 10" role="img" aria-label={microphone.level}>
      <rect class="trough" width="100" height="10" />
      <rect class="fill" width={partOf(props.level) * 100} height="10" />
      <Show when={props.noise}>
        {(noise) => <rect class="floor" x={partOf(noise()) * 100 - 1} width="2" height="10" />}
      </Show>
    </svg>
  );
}

/** What the background lets one expect of the ear. Not announced by a screen reader: it changes all the time. */
export function SoundWords(props: { readonly sound: HeardSound | null }): JSX.Element {
  const words = createMemo(() => (props.sound ? soundInWords(props.sound) : ''));
  return (
    <span class="sound" classList={{ bad: props.sound !== null && isBad(props.sound) }}>
      {words()}
    </span>
  );
}
