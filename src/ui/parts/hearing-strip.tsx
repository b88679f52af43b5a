import { Match, Show, Switch, createMemo, type JSX } from 'solid-js';
import type { HearingState } from '../../hearing/types.ts';
import type { SpeakingState } from '../../speaking/speaking.ts';
import { ear } from '../../words/ear.ts';
import type { HeardSound } from '../heard-sound.ts';
import { LevelMeter, SoundWords } from './sound-words.tsx';

interface Props {
  readonly hearing: HearingState;
  readonly speaking: SpeakingState;
  /** dBFS */
  readonly level: number;
  readonly sound: HeardSound | null;
  /** What is being said is not shown: a second person must not read it here. */
  readonly discreet?: boolean;
  /** Another window has ear and voice. */
  readonly elsewhere: boolean;
  /** Why the ear was closed at the start, where nobody asked for it. */
  readonly closedBecause?: string | null;
  readonly onListen: () => void;
  readonly onMute: () => void;
}

/** The state of ear and voice, always on screen: nobody talks to a program that does not listen. */
export function HearingStrip(props: Props): JSX.Element {
  const isMuted = (): boolean => props.hearing.kind === 'muted' && props.hearing.why === 'asked';
  return (
    <div class={`hearing ${props.hearing.kind}`}>
      {/* On a telephone it is short, and whole where it is touched. */}
      <span class="words" tabindex="0">
        <span class="ear" role="status">
          <Show when={!props.elsewhere} fallback={ear.elsewhere}>
            <HearingText state={props.hearing} discreet={props.discreet ?? false} />
          </Show>
        </span>
        <Show when={isMuted() && props.closedBecause}>{(why) => <span class="why">{why()}</span>}</Show>
        <Show when={props.speaking.why}>{(why) => <span class="why">{ear.voice(why())}</span>}</Show>
        <LevelMeter level={props.level} noise={props.sound?.noise ?? null} />
        {/* A muted ear is not to be trusted less for the noise. */}
        <SoundWords sound={isMuted() ? null : props.sound} />
      </span>
      <Switch>
        <Match when={props.hearing.kind === 'failed' && props.hearing.failure.code.startsWith('model')}>
          <a class="button" href="#/">
            {ear.chooseModel}
          </a>
        </Match>
        <Match when={props.hearing.kind === 'off' || props.hearing.kind === 'failed'}>
          <button type="button" onClick={() => props.onListen()}>
            {ear.startListening}
          </button>
        </Match>
        <Match when={props.hearing.kind === 'listening' || props.hearing.kind === 'hearing'}>
          <button type="button" onClick={() => props.onMute()}>
            {ear.mute}
          </button>
        </Match>
        <Match when={isMuted()}>
          <button type="button" onClick={() => props.onListen()}>
            {ear.unmute}
          </button>
        </Match>
      </Switch>
    </div>
  );
}

/** Words of the moment that cannot be heard, beside what they are about: there is another way for each. */
export function MissingWords(props: { readonly words: readonly string[] }): JSX.Element {
  return (
    <Show when={props.words.length > 0}>
      <p class="why">{ear.unknownWords(props.words)}</p>
    </Show>
  );
}

function HearingText(props: { readonly state: HearingState; readonly discreet: boolean }): JSX.Element {
  const text = createMemo(() => {
    switch (props.state.kind) {
      case 'off':
        return ear.off;
      case 'loading':
        return loadingInWords(props.state);
      case 'listening':
        return ear.listening;
      case 'hearing':
        return props.discreet ? ear.hearing : ear.hearingWords(lastWords(props.state.partial));
      case 'muted':
        return props.state.why === 'own voice' ? ear.speaking : ear.muted;
      case 'failed':
        return ear.failed(props.state.failure.sentence);
    }
  });
  return <>{text()}</>;
}

/** Talk nearby has no end: only its newest words stand here, in one line. */
const SHOWN = 5;
const lastWords = (partial: string): string => {
  const words = partial.replaceAll('[unk]', '…').split(' ');
  return words.length > SHOWN ? `… ${words.slice(-SHOWN).join(' ')}` : words.join(' ');
};

type Loading = Extract<HearingState, { kind: 'loading' }>;

function loadingInWords({ received, total, isWaiting = false }: Loading): string {
  if (total === null) return ear.loadingKept;
  if (received >= total) return ear.unpacking;
  const [percent, megabytes] = [Math.floor((100 * received) / total), (total / 1e6).toFixed(1)];
  return isWaiting ? ear.lineBroken(percent, megabytes) : ear.loading(percent, megabytes);
}
