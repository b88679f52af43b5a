/** What is typed and tapped before a record is closed, and where an inspector gives a name. None of it can be said. */
import { For, Match, Show, Switch, createEffect, createMemo, createSignal, on, onCleanup, type JSX } from 'solid-js';
import { DISPOSITION_KINDS, type Meaning, type Source } from '../../session/intent.ts';
import { inspectsOwnWork, isDoer, LONGEST_NAME, tidyName, tookPart } from '../../session/people.ts';
import type { SessionState } from '../../session/state.ts';
import { announcing } from '../../words/announcing.ts';
import { refusals } from '../../words/refusals.ts';
import { signing } from '../../words/signing.ts';
import { HELD_TO_SIGN } from '../signing.ts';
import type { ClosingView } from '../view/closing.ts';
import { Trouble } from './trouble.tsx';

type People = Pick<SessionState, 'doers' | 'helped'>;
type OnMeaning = (meaning: Meaning, source: Source) => void;

/** The next of what is left: one decision, or one signature. */
export function Closing(props: {
  readonly closing: ClosingView;
  readonly people: People;
  readonly onMeaning: OnMeaning;
}): JSX.Element {
  return (
    <section class="closing" aria-label={signing.beforeClosing}>
      <Switch>
        <Match when={props.closing.kind === 'disposition' && props.closing}>
          {(closing) => <Decide of={closing().of} text={closing().text} onMeaning={props.onMeaning} />}
        </Match>
        <Match when={props.closing.kind === 'signature' && props.closing}>
          {(closing) => (
            // Another role is another name; where one is refused, it stays to be put right.
            <Show keyed when={closing().role}>
              {(role) => <Sign role={role} who={closing().who} people={props.people} onMeaning={props.onMeaning} />}
            </Show>
          )}
        </Match>
      </Switch>
    </section>
  );
}

function Decide(props: { readonly of: number; readonly text: string; readonly onMeaning: OnMeaning }): JSX.Element {
  const [by, setBy] = createSignal('');
  const [note, setNote] = createSignal('');
  // What was typed about one deviation is not said of the next; who decides often stays the same.
  const of = createMemo(() => props.of);
  createEffect(on(of, () => setNote('')));
  const may = (): boolean => by().trim() !== '';
  return (
    <form class="typed" onSubmit={(event) => event.preventDefault()}>
      <p class="question">{props.text}</p>
      <label>
        {signing.whoDecides}
        <input
          name="by"
          autocomplete="off"
          maxLength={LONGEST_NAME}
          value={by()}
          onInput={(event) => setBy(event.currentTarget.value)}
        />
      </label>
      <label>
        {signing.noteIfAny}
        <input name="note" autocomplete="off" value={note()} onInput={(event) => setNote(event.currentTarget.value)} />
      </label>
      <div class="choices" role="group" aria-label={signing.whatBecomesOfIt}>
        <For each={DISPOSITION_KINDS}>
          {(what) => (
            <button
              type="button"
              aria-disabled={!may()}
              onClick={() => {
                if (may()) props.onMeaning({ kind: 'dispose', of: props.of, what, by: by(), note: note() }, 'touch');
              }}
            >
              {signing.disposition[what]}
            </button>
          )}
        </For>
      </div>
    </form>
  );
}

/** Two presses closer together are one double tap, in milliseconds. */
const APART = 500;

function Sign(props: {
  readonly role: 'mechanic' | 'inspector';
  readonly who: string | null;
  readonly people: People;
  readonly onMeaning: OnMeaning;
}): JSX.Element {
  const [name, setName] = createSignal('');
  const [isPressed, setPressed] = createSignal(false);
  const [pressedOnce, setPressedOnce] = createSignal<number | null>(null);
  const may = (): boolean => name().trim() !== '';
  /** Told before the signature: whoever did the work may not inspect it, and who had another part in it should not. */
  const ofWork = (): string | false =>
    inspectsOwnWork(props.people, { role: props.role, person: name() }) &&
    (isDoer(props.people.doers, name()) ? refusals.ownWork : announcing.notIndependent)(tidyName(name()));
  const sign = (source: Source): void => props.onMeaning({ kind: 'sign', role: props.role, name: name() }, source);
  let timer: ReturnType<typeof setTimeout> | undefined;
  const release = (): void => {
    clearTimeout(timer);
    setPressed(false);
  };
  const press = (): void => {
    if (!may()) return;
    setPressed(true);
    timer = setTimeout(() => {
      release();
      sign('touch');
    }, HELD_TO_SIGN);
  };
  onCleanup(release);
  const pressTwice = (source: 'touch' | 'key'): void => {
    const first = pressedOnce();
    if (!may()) return;
    if (first === null) setPressedOnce(performance.now());
    else if (performance.now() - first > APART) {
      setPressedOnce(null);
      sign(source);
    }
  };
  return (
    <form class="typed" onSubmit={(event) => event.preventDefault()}>
      <p class="question">{signing.signs(props.role, props.who)}</p>
      <label>
        {signing.yourName}
        <input
          name="signature"
          autocomplete="off"
          maxLength={LONGEST_NAME}
          value={name()}
          onInput={(event) => {
            // The first press was under the name that stood there.
            setPressedOnce(null);
            setName(event.currentTarget.value);
          }}
        />
      </label>
      <Trouble text={ofWork()} />
      <div class="choices">
        <button
          type="button"
          class="hold-to-sign"
          classList={{ pressed: isPressed(), primary: may() }}
          aria-disabled={!may()}
          onPointerDown={press}
          onPointerUp={release}
          onPointerLeave={release}
          onPointerCancel={release}
          // A long touch opens no menu in place of the signature.
          onContextMenu={(event) => event.preventDefault()}
        >
          {signing.holdToSign}
        </button>
        <button
          type="button"
          aria-disabled={!may()} // A click without a pointer comes from a key.
          onClick={(event) => pressTwice(event.detail === 0 ? 'key' : 'touch')}
        >
          {pressedOnce() === null ? signing.pressTwice : signing.pressOnceMore}
        </button>
      </div>
    </form>
  );
}

/** An inspector gives a name and says what was found. */
export function Inspection(props: { readonly people: People; readonly onMeaning: OnMeaning }): JSX.Element {
  const [name, setName] = createSignal('');
  const may = (): boolean => name().trim() !== '';
  const say = (agrees: boolean): void => {
    if (may()) props.onMeaning({ kind: 'inspects', name: name(), agrees }, 'touch');
  };
  return (
    <section class="closing" aria-label={signing.inspection}>
      <form class="typed" onSubmit={(event) => event.preventDefault()}>
        <label>
          {signing.inspectorsName}
          <input
            name="inspector"
            autocomplete="off"
            maxLength={LONGEST_NAME}
            value={name()}
            onInput={(event) => setName(event.currentTarget.value)}
          />
        </label>
        <Trouble text={tookPart(props.people, name()) && refusals.ownWork(tidyName(name()))} />
        <div class="choices" role="group" aria-label={signing.whatWasFound}>
          <button type="button" aria-disabled={!may()} onClick={() => say(true)}>
            {signing.passed}
          </button>
          <button type="button" aria-disabled={!may()} onClick={() => say(false)}>
            {signing.notPassed}
          </button>
        </div>
      </form>
    </section>
  );
}
