import { Show, type JSX } from 'solid-js';
import type { EventBody } from '../../session/event.ts';
import { currentStep, pendingReading } from '../../session/state.ts';
import { isKept, wantsWitness } from '../../session/witness.ts';
import { lines } from '../../words/lines.ts';
import { describe } from '../describe.ts';
import type { LiveSession } from '../live-session.ts';
import { Trouble } from './trouble.tsx';

/** What is written of a reading that may not stand. */
const HOLDING_VALUE = [
  'reading captured',
  'reading rejected',
  'reading disregarded',
  'witnessed',
  'disputed',
  'timed out',
  'refused',
] as const satisfies readonly EventBody['kind'][];

/** What was heard and what was written, always in the same two lines, and a line to type in. */
export function Lines(props: { readonly live: LiveSession; readonly onLine: (line: string) => void }): JSX.Element {
  // The second person reads off the tool, not off this screen: as long as a step is read by both, no value that they have
  // not both read stands here, not even one that was taken back.
  const isBlind = (): boolean => {
    const state = props.live.state();
    const pending = pendingReading(state);
    const step = pending?.step ?? currentStep(state)?.id;
    return step !== undefined && wantsWitness(state, step) && (pending === null || isKept(state, pending));
  };
  const logged = (): string => {
    const last = props.live.entries().at(-1);
    if (!last) return '';
    const hidden = isBlind() ? HOLDING_VALUE.find((kind) => kind === last.body.kind) : undefined;
    return hidden === undefined ? describe(last, props.live.state()) : lines.withoutValue[hidden];
  };
  return (
    <div class="lines">
      <p class="heard" classList={{ ignored: props.live.heard()?.taken !== 'taken' }}>
        <b>{lines.heard}</b>{' '}
        <span class="what">
          <Show
            when={props.live.provisional()}
            fallback={
              <Show when={props.live.heard()} fallback="—">
                {(heard) => (
                  <>
                    {isBlind() ? lines.keptFromSight : heard().text.replaceAll('[unk]', '…')}
                    {lines.remark[heard().taken]} {heard().answered}
                  </>
                )}
              </Show>
            }
          >
            {(provisional) => <>{lines.ifThatIsAll(provisional().says.join(' '))}</>}
          </Show>
          <Show when={props.live.ignored() > 0}>
            <span class="count">{lines.notForUs(props.live.ignored())}</span>
          </Show>
        </span>
        <span class="tone-word" data-tone={props.live.signal()}>
          <Show when={props.live.signal()}>{(kind) => <>{lines.signal[kind()]}</>}</Show>
        </span>
      </p>
      <p class="logged" role="status">
        <b>{lines.logged}</b> {props.live.entries().length - 1}: {logged()}
      </p>
      <TypedLine onLine={props.onLine} />
      <Trouble text={props.live.trouble()} />
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
        {lines.typeIt}
        <input name="line" autocomplete="off" placeholder={lines.example} />
      </label>
      <button type="submit">{lines.enter}</button>
    </form>
  );
}
