import {
  ErrorBoundary,
  Match,
  Show,
  Switch,
  createMemo,
  createResource,
  createSignal,
  onCleanup,
  type JSX,
} from 'solid-js';
import type { Shop } from '../app.tsx';
import { describe } from '../describe.ts';
import { messageOf } from '../message.ts';
import { showMoment } from '../moment.ts';
import { HeadCheck } from '../parts/head-check.tsx';
import { RecordList } from '../parts/record-list.tsx';
import { VerificationLine } from '../parts/verification-line.tsx';
import { WayBack } from '../parts/way-back.tsx';
import { WorkPanel } from '../parts/work-panel.tsx';
import { addressOf } from '../router.ts';
import { readSession, stateAfter, type KeptSession } from '../session-file.ts';
import { workView } from '../view.ts';

/** A session played back: the screen as it was after any entry, by the same fold that ran live. */
export function ReplayScreen(props: { readonly shop: Shop; readonly session: string }): JSX.Element {
  const [kept] = createResource(() => readSession(props.shop.book, props.session));
  return (
    <ErrorBoundary
      fallback={(error: unknown) => <WayBack>This session cannot be played back: {messageOf(error)}</WayBack>}
    >
      <Switch fallback={<p class="opening">Verifying the record…</p>}>
        <Match when={kept.error as unknown}>{(error) => <WayBack>{messageOf(error())}</WayBack>}</Match>
        <Match when={kept()}>{(found) => <Replay kept={found()} />}</Match>
      </Switch>
    </ErrorBoundary>
  );
}

/** Milliseconds between entries while playing. */
const PLAY_EVERY = 700;

function Replay(props: { readonly kept: KeptSession }): JSX.Element {
  const last = (): number => props.kept.entries.length - 1;
  const [at, setAt] = createSignal(0);
  const [playing, setPlaying] = createSignal(false);
  const entry = () => props.kept.entries[at()];
  const state = createMemo(() => stateAfter(props.kept, at() + 1));
  const view = createMemo(() => workView(state()));
  const timer = setInterval(() => {
    if (!playing()) return;
    if (at() < last()) setAt(at() + 1);
    else setPlaying(false);
  }, PLAY_EVERY);
  onCleanup(() => clearInterval(timer));

  return (
    <main class="replay">
      <header>
        <h1>Replay: {props.kept.procedure.title}</h1>
        <VerificationLine verification={props.kept.verification} found={props.kept.found} />
      </header>
      <div class="scrubber">
        <button type="button" onClick={() => setAt(Math.max(0, at() - 1))} disabled={at() === 0}>
          Step back
        </button>
        <button type="button" onClick={() => setPlaying(!playing())}>
          {playing() ? 'Pause' : 'Play'}
        </button>
        <button type="button" onClick={() => setAt(Math.min(last(), at() + 1))} disabled={at() === last()}>
          Step on
        </button>
        <label>
          <span>
            Entry {at()} of {last()}
          </span>
          <input
            type="range"
            min="0"
            max={last()}
            value={at()}
            onInput={(event) => setAt(event.currentTarget.valueAsNumber)}
          />
        </label>
      </div>
      <Show when={entry()}>
        {(shown) => (
          <p class="moment">
            <time datetime={shown().at.utc}>{showMoment(shown().at.utc)}</time> {shown().person}, by {shown().source}:{' '}
            <b>{describe(shown(), state())}</b>
            <Show when={shown().heard}>{(heard) => <span class="heard"> Heard: “{heard().text}”</span>}</Show>
          </p>
        )}
      </Show>
      <div class="replay-body">
        <section aria-label="The work screen at that moment" class="work">
          <WorkPanel view={view()} />
        </section>
        <RecordList record={props.kept} selected={at()} onSelect={setAt} />
      </div>
      <HeadCheck record={props.kept} />
      <nav class="places">
        <a href={addressOf({ kind: 'start' })}>All sessions</a>
      </nav>
    </main>
  );
}
