import { For, type JSX } from 'solid-js';
import { replay } from '../../words/replay.ts';
import { SPEEDS, type Speed } from './play-clock.ts';
import type { Player } from './player.ts';
import { neighbour, type EventLine } from './search.ts';
import type { EventKind } from './event-kinds.ts';

/** What an auditor goes to in one step. */
const STOPS = ['reading', 'doubt', 'deviation', 'correction'] as const satisfies readonly EventKind[];
type StopKind = (typeof STOPS)[number];

/** Stepping, playing and scrubbing. All of it works by keyboard: the slider is the browser's own. */
export function Controls(props: {
  readonly player: Player;
  readonly lines: readonly EventLine[];
  /** The event that is shown, in words, for who cannot see the picture. */
  readonly told: string;
}): JSX.Element {
  const { player } = props; // eslint-disable-line solid/reactivity
  return (
    <section class="scrubber" aria-label={replay.controls}>
      <div class="keys">
        <button type="button" onClick={() => player.go(player.at() - 1)} disabled={player.at() === 0}>
          {replay.stepBack}
        </button>
        <button type="button" class="play" onClick={() => player.playOrPause()}>
          {player.isPlaying() ? replay.pause : replay.play}
        </button>
        <button type="button" onClick={() => player.go(player.at() + 1)} disabled={player.at() === player.last}>
          {replay.stepOn}
        </button>
        <label class="speed">
          {replay.speed}
          <select
            value={player.speed()}
            onChange={(event) => player.setSpeed(Number(event.currentTarget.value) as Speed)}
          >
            <For each={SPEEDS}>{(speed) => <option value={speed}>{replay.times(speed)}</option>}</For>
          </select>
        </label>
      </div>
      <label class="scrub">
        <span>{replay.entryOf(player.at(), player.last)}</span>
        <input
          type="range"
          min="0"
          max={player.last}
          value={player.at()}
          aria-valuetext={replay.entryTold(player.at(), props.told)}
          onInput={(event) => player.go(event.currentTarget.valueAsNumber)}
        />
      </label>
      <div class="stops">
        <For each={STOPS}>
          {(kind) => (
            <div class="stop" role="group" aria-label={replay.stops[kind].by}>
              <Stop {...props} kind={kind} direction={-1} />
              <span aria-hidden="true">{replay.stops[kind].name}</span>
              <Stop {...props} kind={kind} direction={1} />
            </div>
          )}
        </For>
      </div>
    </section>
  );
}

function Stop(props: {
  readonly player: Player;
  readonly lines: readonly EventLine[];
  readonly kind: StopKind;
  readonly direction: 1 | -1;
}): JSX.Element {
  const to = (): number | null => neighbour(props.lines, props.player.at(), props.kind, props.direction);
  return (
    <button
      type="button"
      aria-label={replay.stops[props.kind][props.direction === 1 ? 'next' : 'previous']}
      aria-disabled={to() === null}
      onClick={() => props.player.go(to() ?? props.player.at())}
    >
      {props.direction === 1 ? '▶' : '◀'}
    </button>
  );
}
