import { createMemo, createSignal, Show, type JSX } from 'solid-js';
import { soundAgreement } from '../../record/sound-agreement.ts';
import type { Sounds } from '../../record/sounds.ts';
import { practice } from '../../words/practice.ts';
import { replay } from '../../words/replay.ts';
import { HeadCheck } from '../parts/head-check.tsx';
import { isPractice } from '../practice/is-practice.ts';
import { WorkPanel } from '../parts/work-panel.tsx';
import { describe } from '../describe.ts';
import { showMoment, zonesOf } from '../moment.ts';
import { readingsFileOf, save, valuesFileOf } from '../saved-files.ts';
import { stateAfter, type KeptSession } from '../session-file.ts';
import { workView } from '../view.ts';
import { Controls } from './controls.tsx';
import { EventDetail } from './event-detail.tsx';
import { EventList } from './event-list.tsx';
import { MatrixView } from './matrix-view.tsx';
import { createPlayer } from './player.ts';
import { RecordSheetView } from './record-sheet-view.tsx';
import { eventLines } from './search.ts';
import { TimeLineView } from './time-line-view.tsx';
import './replay.css';

/** A session played back: verdict first, then the whole of it on a time line, then any moment of it. */
export function Replay(props: {
  readonly kept: KeptSession;
  /** Whether the record is whole, before anything else. */
  readonly verdict: JSX.Element;
  /** How it can be saved, besides its readings. */
  readonly saving?: JSX.Element;
  readonly wayBack: JSX.Element;
  /** Thumbprint of the key that sealed it; null where it is not sealed. */
  readonly thumbprint: string | null;
  /** What is kept of its sounds. */
  readonly sounds: Sounds;
}): JSX.Element {
  const [isSheet, setSheet] = createSignal(false);
  return (
    <Show when={isSheet()} fallback={<Playback {...props} onSheet={() => setSheet(true)} />}>
      <RecordSheetView record={props.kept} thumbprint={props.thumbprint} onLeave={() => setSheet(false)} />
    </Show>
  );
}

function Playback(props: {
  readonly kept: KeptSession;
  readonly verdict: JSX.Element;
  readonly saving?: JSX.Element;
  readonly wayBack: JSX.Element;
  readonly sounds: Sounds;
  readonly onSheet: () => void;
}): JSX.Element {
  // A screen is of one session.
  // eslint-disable-next-line solid/reactivity
  const { kept } = props;
  const player = createPlayer(kept);
  // Whoever practised wants to see what became of their words.
  if (isPractice(kept.id)) player.go(kept.entries.findLastIndex(({ body }) => body.kind === 'reading captured'));
  const entry = () => kept.entries[player.at()];
  const state = createMemo(() => stateAfter(kept, player.at() + 1));
  const view = createMemo(() => workView(state(), entry()?.body));
  const told = createMemo(() => {
    const shown = entry();
    return shown ? describe(shown, state()) : '';
  });
  const lines = createMemo(() => eventLines(kept));
  let moment: HTMLDivElement | undefined;
  /** From far down on the page: the event is brought into sight, and the keyboard goes with it. */
  const show = (seq: number): void => {
    player.go(seq);
    moment?.scrollIntoView({ block: 'start' });
    moment?.focus({ preventScroll: true });
  };

  return (
    <main class="replay">
      <header>
        <h1>{replay.title(kept.procedure.title)}</h1>
        <Show when={isPractice(kept.id)}>
          <p class="invented">
            {practice.noWork} {replay.practised}
          </p>
        </Show>
        {props.verdict}
        <Show when={soundAgreement(kept)}>{(sentence) => <p>{sentence()}</p>}</Show>
        <p class="zone">{timesIn(kept.entries.map(({ at }) => at.utc))}</p>
        <button type="button" onClick={() => props.onSheet()}>
          {replay.recordSheet}
        </button>
      </header>
      <TimeLineView record={kept} at={player.at()} onGo={player.go} />
      <Controls player={player} lines={lines()} told={told()} />
      <div class="replay-body">
        <div class="at-moment" ref={moment} tabindex="-1">
          <Show when={entry()}>
            {(shown) => <EventDetail record={kept} entry={shown()} sounds={props.sounds} onGo={player.go} />}
          </Show>
          <section aria-label={replay.screenThen} class="work">
            <WorkPanel view={view()} />
          </section>
        </div>
        <EventList record={kept} lines={lines()} selected={player.at()} onSelect={player.go} />
      </div>
      <MatrixView record={kept} onGo={show} />
      <HeadCheck record={kept} />
      <section aria-label={replay.saving}>
        <button type="button" onClick={() => save(readingsFileOf(kept))}>
          {replay.saveReadings}
        </button>{' '}
        <Show when={valuesFileOf(kept)}>
          {(file) => (
            <button type="button" onClick={() => save(file())}>
              {replay.saveValues}
            </button>
          )}
        </Show>{' '}
        {props.saving}
      </section>
      <nav class="places">{props.wayBack}</nav>
    </main>
  );
}

/** The zone of all times on the page, told once; and where another begins. */
const timesIn = (times: readonly string[]): string =>
  zonesOf(times)
    .map(({ utc, zone }, i) => (i === 0 ? replay.timesIn(zone) : replay.timesFrom(showMoment(utc), zone)))
    .join('; ');
