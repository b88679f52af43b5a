import {
  Match,
  Show,
  Switch,
  createEffect,
  createResource,
  createSignal,
  onCleanup,
  untrack,
  type JSX,
} from 'solid-js';
import type { Utterance } from '../../hearing/types.ts';
import { watchKeys } from '../../gesture/keys.ts';
import { missedWords, recogniserPhrases } from '../../language/phrases.ts';
import { typedWords } from '../../language/typed.ts';
import { pendingReading, openWarning } from '../../session/state.ts';
import { takePen, type Pen } from '../../storage/pen.ts';
import type { Shop } from '../app.tsx';
import { instantAt } from '../clock.ts';
import { describe } from '../describe.ts';
import { createLiveSession, type LiveSession } from '../live-session.ts';
import { ActionButtons } from '../parts/action-buttons.tsx';
import { HearingStrip } from '../parts/hearing-strip.tsx';
import { WorkPanel } from '../parts/work-panel.tsx';
import { addressOf } from '../router.ts';
import { readSession, stateAfter, type KeptSession } from '../session-file.ts';
import { workView } from '../view.ts';
import { messageOf } from '../message.ts';

/** A session under the hands: this window writes it where it holds the pen, else it only shows it. */
export function WorkScreen(props: { readonly shop: Shop; readonly session: string }): JSX.Element {
  const { book } = untrack(() => props.shop);
  const session = untrack(() => props.session);
  const [attempt, setAttempt] = createSignal(0);
  let pen: Pen | null = null;
  onCleanup(() => pen?.release());
  const [opened] = createResource(attempt, async () => {
    pen ??= await takePen(session);
    return { kept: await readSession(book, session), writes: pen !== null };
  });
  return (
    <Switch fallback={<p class="opening">Opening the record…</p>}>
      <Match when={opened.error as unknown}>{(error) => <p class="opening">{messageOf(error())}</p>}</Match>
      <Match when={opened()}>
        {(found) => (
          <Show
            when={found().writes && found().kept.verification.kind === 'intact'}
            fallback={<ReadOnly kept={found().kept} onAgain={() => setAttempt((count) => count + 1)} />}
          >
            <Bench shop={props.shop} kept={found().kept} />
          </Show>
        )}
      </Match>
    </Switch>
  );
}

function ReadOnly(props: { readonly kept: KeptSession; readonly onAgain: () => void }): JSX.Element {
  const why = (): string =>
    props.kept.verification.kind === 'broken'
      ? `This record is broken at entry ${props.kept.verification.at}: ${props.kept.verification.why}. Nothing more is written to it.`
      : 'Another window works on this session. This one only shows it.';
  return (
    <main class="work">
      <p class="read-only" role="alert">
        {why()}{' '}
        <button type="button" onClick={() => props.onAgain()}>
          Look again
        </button>
      </p>
      <WorkPanel view={workView(stateAfter(props.kept, props.kept.entries.length))} />
    </main>
  );
}

function Bench(props: { readonly shop: Shop; readonly kept: KeptSession }): JSX.Element {
  // The session and its devices stay the same as long as this screen is up.
  // eslint-disable-next-line solid/reactivity
  const { shop, kept } = props;
  const { devices } = shop;
  const live = createLiveSession(kept, {
    book: shop.book,
    say: (texts) => {
      devices.speaking.hush();
      for (const text of texts) void devices.speaking.say({ text });
    },
    tone: (kind) => devices.speaking.tone(kind),
  });
  const [missing, setMissing] = createSignal<readonly string[]>([]);

  createEffect(() => {
    devices.modelName();
    const situation = live.situation();
    const lacking = devices.hearing.setPhrases(recogniserPhrases(situation));
    setMissing(missedWords(situation, lacking));
  });
  onCleanup(devices.hearing.onUtterance((utterance) => void hearUtterance(live, utterance)));
  onCleanup(
    watchKeys((signal, source) => {
      if (signal === 'backward') void live.act({ kind: 'back' }, source);
      else void live.act({ kind: wantsAffirm(live) ? 'affirm' : 'next' }, source);
    }),
  );
  onCleanup(() => devices.speaking.hush());
  keepScreenOn();

  // A fresh session is announced; one that was under way says where it stands, and the record says that it was opened again.
  if (kept.entries.length > 1) void live.act({ kind: 'reopen' }, 'program');
  else live.welcome();
  void devices.start();

  return (
    <main class="work">
      <div class="top">
        <HearingStrip
          hearing={devices.hearingState()}
          speaking={devices.speakingState()}
          level={devices.level()}
          missing={missing()}
          onListen={() => void devices.start()}
          onMute={() => devices.hearing.mute('asked')}
        />
        <nav class="places">
          <a href={addressOf({ kind: 'start' })}>Leave (the session stays)</a>
          <a href={addressOf({ kind: 'replay', session: kept.id })}>Replay</a>
        </nav>
      </div>
      <WorkPanel view={workView(live.state())} />
      <Lines live={live} onLine={(line) => void live.hear(typedWords(line).map(sure), 'key')} />
      <ActionButtons situation={live.situation()} onMeaning={(meaning) => void live.act(meaning, 'touch')} />
    </main>
  );
}

const sure = (word: string): { word: string; confidence: number } => ({ word, confidence: 1 });

/** One pedal is enough: it affirms where a word is awaited, and goes on elsewhere. */
const wantsAffirm = (live: LiveSession): boolean =>
  pendingReading(live.state()) !== null || openWarning(live.state()) !== null;

function hearUtterance(live: LiveSession, { words }: Utterance): Promise<void> {
  const [first, last] = [words[0], words.at(-1)];
  const spoken = first && last ? { from: instantAt(first.start).utc, to: instantAt(last.end).utc } : undefined;
  return live.hear(words, 'voice', spoken);
}

/** What was heard and what was written, always in the same two lines. */
function Lines(props: { readonly live: LiveSession; readonly onLine: (line: string) => void }): JSX.Element {
  const logged = (): string => {
    const last = props.live.entries().at(-1);
    return last ? describe(last) : '';
  };
  return (
    <div class="lines">
      <p class={`heard ${props.live.heard()?.understood === false ? 'ignored' : ''}`}>
        <b>Heard</b> {props.live.heard()?.text ?? '—'}
        <Show when={props.live.ignored() > 0}>
          <span class="count"> ({props.live.ignored()} not for us)</span>
        </Show>
      </p>
      <p class="logged" role="status">
        <b>Logged</b> {props.live.entries().length}: {logged()}
      </p>
      <TypedLine onLine={props.onLine} />
      <Show when={props.live.trouble()}>
        {(trouble) => (
          <p class="trouble" role="alert">
            {trouble()}
          </p>
        )}
      </Show>
    </div>
  );
}

function TypedLine(props: { readonly onLine: (line: string) => void }): JSX.Element {
  return (
    <form
      class="typed"
      onSubmit={(event) => {
        event.preventDefault();
        const field = event.currentTarget.elements.namedItem('line');
        if (!(field instanceof HTMLInputElement) || field.value.trim() === '') return;
        props.onLine(field.value);
        field.value = '';
      }}
    >
      <label>
        Type what you would say
        <input name="line" autocomplete="off" placeholder="4 24.5" />
      </label>
      <button type="submit">Enter</button>
    </form>
  );
}

/** The mechanic has no hand free to wake a screen. The lock is lost when the page is hidden, so it is taken again. */
function keepScreenOn(): void {
  const take = (): void => {
    if (document.visibilityState === 'visible') void navigator.wakeLock?.request('screen').catch(() => undefined);
  };
  take();
  document.addEventListener('visibilitychange', take);
  onCleanup(() => document.removeEventListener('visibilitychange', take));
}
