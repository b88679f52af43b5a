import { For, Index, Show, createEffect, createMemo, createSignal, on, onCleanup, type JSX } from 'solid-js';
import {
  bindingsFor,
  DEFAULT_BINDINGS,
  readBindings,
  SIGNALS,
  type BindingFault,
  type Bindings,
  type Signal,
  type Switch,
} from '../../gesture/bindings.ts';
import { watchSwitches, type SwitchPress } from '../../gesture/keys.ts';
import { isSamePerson } from '../../session/people.ts';
import { teachScreen } from '../../words/teach-screen.ts';
import type { Shop } from '../app.tsx';
import { switchBook } from '../hand-habits.ts';
import { AmountField } from './amount-field.tsx';
import { Faults } from './faults.tsx';
import { KeptLine } from './kept-line.tsx';
import { LearnKeys } from './learn-keys.tsx';

/** One, two or three switches: learned by pressing them, bound to what they ask for, and tried. */
export function SwitchesSection(props: { readonly shop: Shop; readonly person: string }): JSX.Element {
  const kept = createMemo(() => props.shop.switches().find(({ name }) => isSamePerson(name, props.person))?.value);
  const [draft, setDraft] = createSignal<Bindings>(DEFAULT_BINDINGS);
  const [faults, setFaults] = createSignal<readonly BindingFault[]>([]);
  // What is not kept of one person is nobody else's.
  createEffect(
    on([kept, () => props.person], ([now]) => {
      setDraft(now ?? DEFAULT_BINDINGS);
      setFaults([]);
    }),
  );

  /** What is whole is kept at once; what is not stays on the page with what is wrong. */
  async function change(to: Bindings): Promise<void> {
    setDraft(to);
    const read = readBindings(to);
    setFaults(read.kind === 'faulty' ? read.faults : []);
    if (read.kind === 'valid')
      props.shop.setSwitches(await switchBook.keep({ name: props.person, value: read.bindings }));
  }
  const changeSwitch = (at: number, to: Switch): void =>
    void change({ ...draft(), switches: draft().switches.with(at, to) });
  const changeTiming = (part: Partial<Bindings['timing']>): void =>
    void change({ ...draft(), timing: { ...draft().timing, ...part } });

  const forget = async (): Promise<void> => {
    const left = await switchBook.forget(props.person);
    props.shop.setSwitches(left);
  };
  return (
    <section aria-labelledby="switches">
      <h2 id="switches">{teachScreen.switches.title}</h2>
      <LearnKeys onLearned={(keys) => void change(bindingsFor(keys))} />
      <ol class="switches">
        <Index each={draft().switches}>
          {(bound, at) => <SwitchRow number={at + 1} bound={bound()} onChange={(to) => changeSwitch(at, to)} />}
        </Index>
      </ol>
      <div class="amounts">
        <AmountField
          label={teachScreen.switches.longPress}
          unit="ms"
          step={100}
          value={draft().timing.longPress}
          onChange={(longPress) => changeTiming({ longPress })}
        />
        <AmountField
          label={teachScreen.switches.doublePress}
          unit="ms"
          step={50}
          value={draft().timing.doublePress}
          onChange={(doublePress) => changeTiming({ doublePress })}
        />
        <Show
          when={draft().pace}
          fallback={
            <button type="button" class="wide" onClick={() => void change({ ...draft(), pace: 1500 })}>
              {teachScreen.switches.letTimeMove}
            </button>
          }
        >
          {(pace) => (
            <AmountField
              label={teachScreen.switches.pace}
              unit="ms"
              step={250}
              value={pace()}
              onChange={(to) => void change({ ...draft(), pace: to })}
            />
          )}
        </Show>
        <label class="tick">
          <input
            type="checkbox"
            checked={draft().isSpoken}
            onChange={(event) => void change({ ...draft(), isSpoken: event.currentTarget.checked })}
          />
          <span>{teachScreen.switches.sayLit}</span>
        </label>
      </div>
      <Faults faults={faults()} />
      <TrySwitches bindings={draft()} />
      <KeptLine
        person={props.person}
        isKept={kept() !== undefined}
        otherwise={teachScreen.switches.nothingTaught}
        onForget={forget}
      />
    </section>
  );
}

function SwitchRow(props: {
  readonly number: number;
  readonly bound: Switch;
  readonly onChange: (to: Switch) => void;
}): JSX.Element {
  function bind(kind: 'long' | 'double', signal: Signal | null): void {
    const { long, double, ...rest } = props.bound;
    const both = { ...(long && { long }), ...(double && { double }) };
    const { [kind]: _, ...other } = both;
    props.onChange({ ...rest, ...other, ...(signal && { [kind]: signal }) });
  }
  return (
    <li>
      <p>
        <b>{teachScreen.switches.one(props.number)}</b> <kbd>{props.bound.keys.map(keyName).join(', ')}</kbd>
      </p>
      <SignalField
        label={teachScreen.switches.press(props.number)}
        signal={props.bound.press}
        onChange={(press) => press && props.onChange({ ...props.bound, press })}
      />
      <SignalField
        label={teachScreen.switches.long(props.number)}
        signal={props.bound.long ?? null}
        mayBeNone
        onChange={(signal) => bind('long', signal)}
      />
      <SignalField
        label={teachScreen.switches.double(props.number)}
        signal={props.bound.double ?? null}
        mayBeNone
        onChange={(signal) => bind('double', signal)}
      />
    </li>
  );
}

const keyName = (key: string): string => (key === ' ' ? teachScreen.switches.space : key);

function SignalField(props: {
  readonly label: string;
  readonly signal: Signal | null;
  readonly mayBeNone?: true;
  readonly onChange: (signal: Signal | null) => void;
}): JSX.Element {
  return (
    <label>
      {props.label}
      <select
        value={props.signal ?? ''}
        onChange={(event) => props.onChange(SIGNALS.find((each) => each === event.currentTarget.value) ?? null)}
      >
        <Show when={props.mayBeNone}>
          <option value="">{teachScreen.switches.noSignal}</option>
        </Show>
        <For each={SIGNALS}>
          {(signal) => (
            <option value={signal} selected={signal === props.signal}>
              {teachScreen.switches.signals[signal]}
            </option>
          )}
        </For>
      </select>
    </label>
  );
}

/** Presses on this page, as they are recognised: they do nothing else. */
function TrySwitches(props: { readonly bindings: Bindings }): JSX.Element {
  const [tried, setTried] = createSignal<readonly SwitchPress[]>([]);
  createEffect(() => {
    const own = props.bindings;
    onCleanup(
      watchSwitches(
        () => own,
        (press) => setTried((before) => [press, ...before].slice(0, MOST_SHOWN)),
      ),
    );
  });
  createEffect(
    on(
      () => props.bindings,
      () => setTried([]),
      { defer: true },
    ),
  );
  return (
    <div class="tried" aria-live="polite">
      <p>
        <b>{teachScreen.switches.tryThem}</b> {teachScreen.switches.pressAny}
      </p>
      <ol>
        <For each={tried()} fallback={<li>{teachScreen.nothingYet}</li>}>
          {({ of, kind, sureness, signal }) => (
            <li>
              {teachScreen.switches.tried(
                of + 1,
                teachScreen.switches.presses[kind],
                Math.round(sureness * 100),
                signal === null ? teachScreen.switches.notBound : teachScreen.switches.signals[signal],
              )}
            </li>
          )}
        </For>
      </ol>
    </div>
  );
}

const MOST_SHOWN = 4;
