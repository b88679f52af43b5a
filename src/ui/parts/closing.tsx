/** What is typed and tapped before a record is closed, and where an inspector gives a name. None of it can be said. */
import { For, Match, Switch, createEffect, createSignal, on, onCleanup, type JSX } from 'solid-js';
import { DISPOSITION_KINDS, type Meaning, type Source } from '../../session/intent.ts';
import { LONGEST_NAME } from '../../session/people.ts';
import { signing } from '../../words/signing.ts';
import { HELD_TO_SIGN } from '../signing.ts';
import type { ClosingView } from '../view/closing.ts';

type OnMeaning = (meaning: Meaning, source: Source) => void;

/** The next of what is left: one decision, or one signature. */
export function Closing(props: { readonly closing: ClosingView; readonly onMeaning: OnMeaning }): JSX.Element {
  return (
    <section class="closing" aria-label={signing.beforeClosing}>
      <Switch>
        <Match when={props.closing.kind === 'disposition' && props.closing}>
          {(closing) => <Decide of={closing().of} text={closing().text} onMeaning={props.onMeaning} />}
        </Match>
        <Match when={props.closing.kind === 'signature' && props.closing}>
          {(closing) => <Sign role={closing().role} who={closing().who} onMeaning={props.onMeaning} />}
        </Match>
      </Switch>
    </section>
  );
}

function Decide(props: { readonly of: number; readonly text: string; readonly onMeaning: OnMeaning }): JSX.Element {
  const [by, setBy] = createSignal('');
  const [note, setNote] = createSignal('');
  // What was typed about one deviation is not said of the next; who decides often stays the same.
  createEffect(
    on(
      () => props.of,
      () => setNote(''),
    ),
  );
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
  readonly onMeaning: OnMeaning;
}): JSX.Element {
  const [name, setName] = createSignal('');
  const [isPressed, setPressed] = createSignal(false);
  const [pressedOnce, setPressedOnce] = createSignal<number | null>(null);
  createEffect(
    on(
      () => props.role,
      () => {
        setName('');
        setPressedOnce(null);
      },
    ),
  );
  const may = (): boolean => name().trim() !== '';
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
export function Inspection(props: { readonly onMeaning: OnMeaning }): JSX.Element {
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
