import { For, Match, Show, Switch, createMemo, onCleanup, onMount, untrack, type JSX } from 'solid-js';
import { keepVoice, type Voice } from '../../storage/voices.ts';
import { checkScreen } from '../../words/check-screen.ts';
import { microphone } from '../../words/microphone.ts';
import type { Shop } from '../app.tsx';
import { FITNESS_SIGN, measuredInWords, verdictOf } from '../check-words.ts';
import { createMicrophoneCheck } from '../microphone-check.ts';
import { HearingStrip } from '../parts/hearing-strip.tsx';
import { KeptVoices } from '../parts/kept-voices.tsx';
import { BackLink } from '../parts/way-back.tsx';

/** How one person is heard here, before the work depends on it. Touch, pedal and keys work whatever comes out. */
export function CheckScreen(props: {
  readonly shop: Shop;
  readonly person: string;
  readonly session: string | null;
}): JSX.Element {
  const { shop, person } = untrack(() => props);
  const { devices } = shop;
  const check = createMicrophoneCheck(devices, person);
  onCleanup(() => check.leave());

  async function begin(): Promise<void> {
    const voice = await check.begin();
    if (!voice) return;
    const { fitness, findings } = verdictOf(voice);
    void devices.announce([
      checkScreen.verdict(microphone.fitness[fitness]),
      ...findings.map((finding) => microphone.finding[finding]),
    ]);
    shop.setVoices(await keepVoice(voice));
  }

  let main: HTMLElement | undefined;
  onMount(() => main?.focus());
  return (
    <main class="check" ref={main} tabindex="-1">
      <div class="top">
        <HearingStrip
          hearing={devices.hearingState()}
          speaking={devices.speakingState()}
          level={devices.level()}
          sound={devices.sound()}
          elsewhere={devices.elsewhere()}
          onListen={() => void devices.start()}
          onMute={() => devices.hearing.mute('asked')}
        />
      </div>
      <header>
        <h1>{checkScreen.title}</h1>
        <p>{person}</p>
      </header>
      <section class="now" aria-live="polite">
        <Switch>
          <Match when={check.stage().kind === 'before'}>
            <p>{checkScreen.whatComes}</p>
          </Match>
          <Match when={check.stage().kind === 'silence'}>
            <p class="large">{checkScreen.beSilent}</p>
          </Match>
          <Match when={phraseOf(check.stage())}>
            {(phrase) => (
              <>
                <p>{checkScreen.sayAfterVoice}</p>
                <p class="large">{phrase()}</p>
              </>
            )}
          </Match>
          <Match when={check.stage().kind === 'over'}>
            <Result stage={check.stage()} />
          </Match>
        </Switch>
      </section>
      <ol class="trials">
        <For each={check.trials()}>{(trial) => <TrialLine trial={trial} />}</For>
      </ol>
      <div class="choices">
        <button
          type="button"
          class="primary"
          aria-disabled={isRunning(check.stage().kind)}
          onClick={() => isRunning(check.stage().kind) || void begin()}
        >
          {check.stage().kind === 'over' ? checkScreen.again : checkScreen.begin}
        </button>
        <BackLink session={props.session} isPreparing={shop.preparation() !== null} />
      </div>
      <KeptVoices shop={shop} />
    </main>
  );
}

type Stage = ReturnType<ReturnType<typeof createMicrophoneCheck>['stage']>;

const isRunning = (kind: Stage['kind']): boolean => kind === 'silence' || kind === 'say';
const phraseOf = (stage: Stage): string | null => (stage.kind === 'say' ? stage.phrase : null);

function Result(props: { readonly stage: Stage }): JSX.Element {
  const voice = (): Voice | null => (props.stage.kind === 'over' ? props.stage.voice : null);
  return (
    <Show
      when={voice()}
      fallback={
        <>
          <p class="large">{checkScreen.earNotOpen}</p>
          <p>{checkScreen.whyAbove}</p>
        </>
      }
    >
      {(voice) => {
        const verdict = createMemo(() => verdictOf(voice()));
        return (
          <div class={`verdict ${verdict().fitness.replaceAll(' ', '-')}`}>
            <p class="large">
              {FITNESS_SIGN[verdict().fitness]} {microphone.fitness[verdict().fitness]}
            </p>
            <p>{measuredInWords(voice())}</p>
            <ul>
              <For each={verdict().findings}>{(finding) => <li>{microphone.finding[finding]}</li>}</For>
            </ul>
            <Show when={verdict().fitness === 'do not start by voice'}>
              <p>{checkScreen.startsClosed}</p>
            </Show>
          </div>
        );
      }}
    </Show>
  );
}

function TrialLine(props: { readonly trial: Voice['trials'][number] }): JSX.Element {
  return (
    <li classList={{ wrong: !props.trial.isRight }}>
      <span>{props.trial.isRight ? '✓' : '✗'}</span> <b>{props.trial.asked}</b>{' '}
      <span>{props.trial.heard ? checkScreen.heard(props.trial.heard) : checkScreen.notHeard}</span>
    </li>
  );
}
