import { For, type JSX } from 'solid-js';
import { SPEEDS, type Speed } from './play-clock.ts';
import type { Player } from './player.ts';
import { neighbour, type EventLine } from './search.ts';
import type { EventKind } from './event-kinds.ts';

/** What an auditor goes to in one step. */
const STOPS: readonly (readonly [EventKind, string])[] = [
  ['reading', 'reading'],
  ['doubt', 'doubt'],
  ['deviation', 'deviation'],
  ['correction', 'correction'],
];

/** Stepping, playing and scrubbing. All of it works by keyboard: the slider is the browser's own. */
export function Controls(props: {
  readonly player: Player;
  readonly lines: readonly EventLine[];
  /** The event that is shown, in words, for who cannot see the picture. */
  readonly told: string;
}): JSX.Element {
  const { player } = props; // eslint-disable-line solid/reactivity
  return (
    <section class="scrubber" aria-label="Play and step">
      <div class="keys">
        <button type="button" onClick={() => player.go(player.at() - 1)} disabled={player.at() === 0}>
          Step back
        </button>
        <button type="button" class="play" onClick={() => player.playOrPause()}>
          {player.isPlaying() ? 'Pause' : 'Play'}
        </button>
        <button type="button" onClick={() => player.go(player.at() + 1)} disabled={player.at() === player.last}>
          Step on
        </button>
        <label class="speed">
          Speed
          <select
            value={player.speed()}
            onChange={(event) => player.setSpeed(Number(event.currentTarget.value) as Speed)}
          >
            <For each={SPEEDS}>{(speed) => <option value={speed}>{speed}×</option>}</For>
          </select>
        </label>
      </div>
      <label class="scrub">
        <span>
          Entry {player.at()} of {player.last}
        </span>
        <input
          type="range"
          min="0"
          max={player.last}
          value={player.at()}
          aria-valuetext={`Entry ${player.at()}: ${props.told}`}
          onInput={(event) => player.go(event.currentTarget.valueAsNumber)}
        />
      </label>
      <div class="stops">
        <For each={STOPS}>
          {([kind, name]) => (
            <div class="stop" role="group" aria-label={`By ${name}`}>
              <Stop {...props} kind={kind} name={name} direction={-1} />
              <span aria-hidden="true">{name}</span>
              <Stop {...props} kind={kind} name={name} direction={1} />
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
  readonly kind: EventKind;
  readonly name: string;
  readonly direction: 1 | -1;
}): JSX.Element {
  const to = (): number | null => neighbour(props.lines, props.player.at(), props.kind, props.direction);
  return (
    <button
      type="button"
      aria-label={`${props.direction === 1 ? 'Next' : 'Previous'} ${props.name}`}
      aria-disabled={to() === null}
      onClick={() => props.player.go(to() ?? props.player.at())}
    >
      {props.direction === 1 ? '▶' : '◀'}
    </button>
  );
}
