import { Show, createEffect, createMemo, createSignal, on, onCleanup, onMount, type JSX } from 'solid-js';
import { CAMERA_AT_FIRST, watchedAs } from '../../gesture/camera-habit.ts';
import { decide } from '../../session/decide.ts';
import type { Meaning } from '../../session/intent.ts';
import { silenceAfter } from '../../session/silence.ts';
import { habitOf } from '../../storage/habits.ts';
import { openSoundStore } from '../../storage/sound-store.ts';
import { workScreen } from '../../words/work-screen.ts';
import type { Shop } from '../app.tsx';
import { surenessOf } from '../check-words.ts';
import { now } from '../clock.ts';
import { sealOnDevice } from '../device-seal.ts';
import type { Devices } from '../devices.ts';
import { createEarAtWork } from '../ear-at-work.ts';
import { createHalves } from '../halves.ts';
import { cameraBook } from '../hand-habits.ts';
import { createHoldClock } from '../hold-clock.ts';
import { keepScreenOn } from '../keep-screen-on.ts';
import { createLiveSession } from '../live-session.ts';
import { ActionButtons, AnswerButtons, AskButtons, SeldomButtons } from '../parts/action-buttons.tsx';
import { CameraStrip } from '../parts/camera-strip.tsx';
import { ClosedNote } from '../parts/closed-note.tsx';
import { Closing, Inspection } from '../parts/closing.tsx';
import { FreshConsumable } from '../parts/fresh-consumable.tsx';
import { Halves } from '../parts/halves.tsx';
import { HearingStrip, MissingWords } from '../parts/hearing-strip.tsx';
import { LettersReach } from '../parts/letters-reach.tsx';
import { Lines } from '../parts/lines.tsx';
import { PeoplePanel } from '../parts/people-panel.tsx';
import { SecondLink } from '../parts/second-link.tsx';
import { StorageLine } from '../parts/storage-line.tsx';
import { SwitchChoices } from '../parts/switch-choices.tsx';
import { WorkPanel } from '../parts/work-panel.tsx';
import { isPractice } from '../practice/is-practice.ts';
import { addressOf, go } from '../router.ts';
import { openSecondDesk } from '../second-desk.ts';
import { isFresh, stateAfter, type KeptSession } from '../session-file.ts';
import { createSidesCheck } from '../sides-check.ts';
import { createSoundKeeper, type KeepSound } from '../sound-keeper.ts';
import { createSwitchBoard } from '../switch-board.ts';
import { workView, type WorkView } from '../view.ts';
import { primaryOf } from '../view/primary.ts';
import { createWaitClock } from '../wait-clock.ts';
import { watchGestures } from '../watch-gestures.ts';

/** The work itself, in the window that holds the pen: ear, voice, keys and touch around one session. */
export function Bench(props: {
  readonly shop: Shop;
  readonly kept: KeptSession;
  /** Thumbprint of its key; null where it keeps none. */
  readonly device: string | null;
}): JSX.Element {
  // The session and its devices stay the same as long as this screen is up.
  // eslint-disable-next-line solid/reactivity
  const { shop, kept, device } = props;
  const { devices } = shop;
  const keepSound = soundKeeper(kept, devices);
  const [isSealingOver, setSealingOver] = createSignal(stateAfter(kept, kept.entries.length).phase === 'closed');
  const live = createLiveSession(kept, {
    book: shop.book,
    say: (texts, said) => devices.announce(texts, said),
    callOut: (texts) => devices.callOut(texts),
    tone: (kind) => void devices.tone(kind),
    sureness: (people) => surenessOf(shop.voices(), people, now().utc),
    onClosed: (entries) =>
      sealOnDevice(kept.id, entries)
        .then(() => [])
        .catch(() => [workScreen.notSealed])
        .finally(() => setSealingOver(true)),
    ...(device === null ? {} : { device }),
    ...(keepSound ? { keepSound } : {}),
  });
  // The second person takes part from a window of their own; this one carries out what comes from there.
  const desk = openSecondDesk(kept.id, live);
  const mechanic = () => live.state().people.mechanic;
  const view = createMemo(() => workView(live.state(), live.entries().at(-1)?.body));
  /** What stands in the panel already while a number may still go on. What can be pressed goes by what is certain. */
  const soonToBe = createMemo(() => {
    const state = live.provisional()?.state ?? null;
    return state && workView(state);
  });
  const watched = () => habitOf(shop.watched(), mechanic()) ?? CAMERA_AT_FIRST;
  const sides = createSidesCheck({
    camera: devices.camera,
    live,
    watched,
    keep: (value) => void cameraBook.keep({ name: mechanic(), value }).then((kept) => shop.setWatched(kept)),
    addNews: (text) => void devices.addNews(text),
  });
  const situation = createMemo(() => sides.situation());
  const ear = createEarAtWork(shop, live, mechanic, { sides, situation, isPractice: isPractice(kept.id) });
  const taught = () => habitOf(shop.switches(), mechanic());
  const switches = createSwitchBoard({ live, devices, taught });
  const strictness = () => watched().strictness;
  watchGestures(devices, live, switches, sides, strictness);
  // Whoever takes over, or has turned the picture, is watched accordingly.
  const watching = createMemo(() => watchedAs(watched()), undefined, {
    equals: (one, other) => JSON.stringify(one) === JSON.stringify(other),
  });
  createEffect(on(watching, (as) => devices.camera.state.kind !== 'off' && devices.camera.start(as), { defer: true }));
  // eslint-disable-next-line solid/reactivity -- read where the halves are drawn
  const halves = createHalves(shop, mechanic, view);
  // Nobody answered a read-back: it is asked again, once all is quiet. Silence is an input, never an answer.
  createEffect(() => {
    const wait = silenceAfter(live.state());
    const isQuiet = devices.speakingState().saying === null && devices.hearingState().kind !== 'hearing';
    if (wait === null || !isQuiet) return;
    const timer = setTimeout(() => void live.act({ kind: 'silence' }, 'program'), wait);
    onCleanup(() => clearTimeout(timer));
  });
  createHoldClock({
    state: live.state,
    isSaying: () => devices.speakingState().saying !== null,
    isHearing: () => devices.hearingState().kind === 'hearing',
    now: () => now().utc,
    onCall: () => void live.act({ kind: 'time passed' }, 'program'),
    onTime: (text) => void devices.announce([text]),
  });
  createWaitClock(
    live.state,
    () => now().utc,
    (text) => void devices.addNews(text),
  );
  // Practice ends with its replay, once the last word is spoken.
  createEffect(() => {
    const isOver = isPractice(kept.id) && isSealingOver() && devices.speakingState().saying === null;
    if (!isOver) return;
    const timer = setTimeout(() => go({ kind: 'replay', session: kept.id }), BREATH);
    onCleanup(() => clearTimeout(timer));
  });
  onCleanup(() => void devices.announce([]));
  keepScreenOn();
  // A fresh session is announced; one that was under way says where it stands, and the record says that it was opened again.
  if (!isFresh(kept)) void live.act({ kind: 'reopen' }, 'program');
  else live.welcome();
  /** While it is asked how the camera sees, its answers are none to the session. */
  const isRefused = (meaning: Meaning): boolean =>
    !(sides.isAsked() && (meaning.kind === 'affirm' || meaning.kind === 'negative')) &&
    decide(live.state(), { meaning, at: now() }).kind === 'refused';
  /** What was tapped below is answered above. */
  const below = (meaning: Meaning): void => void live.act(meaning, 'touch').then(() => main?.scrollIntoView());
  let main: HTMLElement | undefined;
  // Keys and screen readers begin at the work, not at what is left of the screen before.
  onMount(() => main?.focus());
  return (
    <main class="work with-more" ref={main} tabindex="-1" onPointerDown={() => devices.wake()}>
      <div class="first-sight" classList={{ halved: halves.isShown() }}>
        <div class="top">
          <HearingStrip
            hearing={devices.hearingState()}
            speaking={devices.speakingState()}
            level={devices.level()}
            sound={devices.sound()}
            discreet={isWitnessed(view())}
            elsewhere={devices.elsewhere()}
            closedBecause={ear.closedBecause()}
            onListen={() => void ear.listen()}
            onMute={() => void ear.mute()}
          />
          <CameraStrip
            state={devices.cameraState()}
            onStart={() => devices.camera.start(watching())}
            onStop={() => devices.camera.stop()}
          />
          <nav class="places">
            <Show when={isPractice(kept.id)}>
              <b>{workScreen.practice}</b>
            </Show>
            <a href={addressOf({ kind: 'start' })}>{workScreen.leave}</a>
            <a href={addressOf({ kind: 'replay', session: kept.id })}>{workScreen.replay}</a>
            <a href={addressOf({ kind: 'check', person: mechanic(), session: kept.id })}>
              {workScreen.microphoneCheck}
            </a>
            <a href={addressOf({ kind: 'teach', session: kept.id })}>{workScreen.teach}</a>
            <LettersReach display={shop.display} session={kept.id} shown={view()} />
            <SecondLink session={kept.id} dropped={desk.dropped()} />
          </nav>
        </div>
        <div class="stage">
          <WorkPanel view={soonToBe() ?? view()} isProvisional={soonToBe() !== null} unheard={live.heard()?.unheard} />
          <MissingWords words={ear.missing()} />
          <Show when={view().closing}>
            {(closing) => (
              <Closing
                closing={closing()}
                people={live.state()}
                onMeaning={(meaning, source) => void live.act(meaning, source)}
              />
            )}
          </Show>
          <Show when={view().spent}>
            {(spent) => <FreshConsumable spent={spent()} onMeaning={(meaning) => void live.act(meaning, 'touch')} />}
          </Show>
          <Show when={view().wantsInspector}>
            <Inspection people={live.state()} onMeaning={(meaning, source) => void live.act(meaning, source)} />
          </Show>
          <Show when={live.state().phase === 'closed'}>
            <ClosedNote
              book={shop.book}
              session={kept.id}
              entries={live.entries().length}
              state={live.state()}
              isSealingOver={isSealingOver()}
            />
          </Show>
          <Show when={sides.shown()}>
            {(shown) => (
              <p class="sides" role="status">
                {shown()}
              </p>
            )}
          </Show>
          <AnswerButtons
            situation={situation()}
            primary={primaryOf(view())}
            isRefused={isRefused}
            onMeaning={(meaning) => void live.act(meaning, 'touch')}
          />
        </div>
        <Lines live={live} onLine={(line) => ear.typed(line)} />
        <SwitchChoices panel={switches.panel()} isTaught={taught() !== null} />
        <ActionButtons
          situation={situation()}
          primary={primaryOf(view())}
          isRefused={isRefused}
          onMeaning={(meaning) => sides.takes(meaning) || void live.act(meaning, 'touch')}
        />
      </div>
      <div class="more">
        <Show when={halves.isShown()}>
          <Halves
            thresholds={halves.thresholds()}
            pixelsPerMm={shop.display.letters().pixelsPerMm}
            onSignal={(signal, began) => switches.give(signal, 'touch', began)}
            onLeave={() => void halves.leave()}
          />
        </Show>
        <StorageLine asks={true} onLittleRoom={(text) => void devices.addNews(text)} />
        <AskButtons situation={situation()} isRefused={isRefused} onMeaning={below} />
        <SeldomButtons situation={situation()} isRefused={isRefused} onMeaning={below} />
        <PeoplePanel view={view()} onMeaning={below} />
      </div>
    </main>
  );
}

/** Longer than any pause between two announcements, in milliseconds. */
const BREATH = 2_000;

/** Keeps sound for as long as this screen is up, where everybody agreed to it at the start; undefined where not. */
function soundKeeper({ id, entries }: KeptSession, { memory }: Devices): KeepSound | undefined {
  const opened = entries[0]?.body;
  if (opened?.kind !== 'opened' || opened.sound !== 'agreed') return undefined;
  memory.start();
  onCleanup(() => memory.stop());
  return createSoundKeeper(id, opened.people, memory, openSoundStore());
}

/** Whether a second person reads the same values blind: then nothing that is said may stand on the screen. */
const isWitnessed = ({ step }: WorkView): boolean => step?.kind === 'tighten' && step.confirm === 'witness each';
