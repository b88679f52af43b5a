import { For, Show, createMemo, type JSX } from 'solid-js';
import { cameIn, isMeasured } from '../../record/came-in.ts';
import type { Entry } from '../../record/entry.ts';
import { differenceFrom, fateOf, historyOf } from '../../record/reading-history.ts';
import { stateAfter, type SessionRecord } from '../../record/session-record.ts';
import type { Sounds } from '../../record/sounds.ts';
import type { EventBody } from '../../session/event.ts';
import type { Source } from '../../session/intent.ts';
import type { Reading } from '../../session/reading.ts';
import { events } from '../../words/events.ts';
import { fates } from '../../words/fates.ts';
import { describe } from '../describe.ts';
import { showMoment } from '../moment.ts';
import { EvidenceSound } from './evidence-sound.tsx';
import { kindsOf } from './event-kinds.ts';
import { Heads } from './table.tsx';

/** One event in full: when, by whom, what was said and how surely it was heard, and how the value of its fastener came about. */
export function EventDetail(props: {
  readonly record: SessionRecord;
  readonly entry: Entry;
  readonly sounds: Sounds;
  readonly onGo: (seq: number) => void;
}): JSX.Element {
  const state = createMemo(() => stateAfter(props.record, props.entry.seq + 1));
  const kinds = createMemo(() => kindsOf(props.entry.body, props.record.procedure).map((kind) => events.kinds[kind]));
  return (
    <section class="moment" aria-label={events.one.title} tabindex="-1">
      <p>
        <time datetime={props.entry.at.utc}>{showMoment(props.entry.at.utc)}</time>{' '}
        {events.one.by(props.entry.person, events.sources[props.entry.source])}{' '}
        <span class="kinds">{events.one.isOf(kinds())}</span>
      </p>
      <p>
        <b>{describe(props.entry, state())}</b>
      </p>
      <Show when={props.entry.heard}>{(heard) => <HeardWords heard={heard()} source={props.entry.source} />}</Show>
      <Show when={props.entry.heard?.sound}>
        {(heard) => <EvidenceSound record={props.record} heard={heard()} sounds={props.sounds} />}
      </Show>
      <Show when={readingAbout(props.record, props.entry.body, props.entry.seq)}>
        {(reading) => <History {...props} reading={reading()} />}
      </Show>
    </section>
  );
}

/** The reading that an event is about, with what became of it in the end. */
function readingAbout(record: SessionRecord, body: EventBody, seq: number): Reading | null {
  const about = body.kind === 'reading captured' ? seq : 'of' in body ? body.of : null;
  if (about === null) return null;
  const { readings } = stateAfter(record, record.entries.length);
  return readings.find((reading) => reading.seq === about) ?? null;
}

/** Less sure than this, and the recogniser may well have heard another word. */
const UNSURE = 0.7;

function HeardWords(props: { readonly heard: NonNullable<Entry['heard']>; readonly source: Source }): JSX.Element {
  return (
    <p class="heard">
      {events.one.words(events.one.cameIn[cameIn(props.source, props.heard)], props.heard.text)}
      <Show when={isMeasured(props.source) && props.heard.words.length > 0}>
        <span class="words">
          {' '}
          {events.one.howSurely}{' '}
          <For each={props.heard.words}>
            {({ word, confidence }) => (
              <span class={Number(confidence) < UNSURE ? 'word unsure' : 'word'}>
                {word} <b>{confidence}</b>
                {Number(confidence) < UNSURE ? ` ${events.one.unsure}` : ''}
              </span>
            )}
          </For>
        </span>
      </Show>
      <Show when={props.heard.again !== undefined && props.heard.again !== props.heard.text}>
        <span> {events.one.heardAgain(props.heard.again ?? '')}</span>
      </Show>
    </p>
  );
}

/** First value, corrections and the witness, one under the other, with how far they are apart. */
function History(props: {
  readonly record: SessionRecord;
  readonly reading: Reading;
  readonly onGo: (seq: number) => void;
}): JSX.Element {
  const history = createMemo(() => {
    // Everything that came of this fastener, also after the moment that is shown: an auditor looks at all of it.
    const { readings } = stateAfter(props.record, props.record.entries.length);
    return historyOf(readings, props.reading);
  });
  const first = (): Reading => history()[0] ?? props.reading;
  return (
    <Show when={history().length > 1 || props.reading.witnessed}>
      <div class="wide">
        <table class="history">
          <caption>{events.history.title}</caption>
          <Heads
            words={[
              events.history.entry,
              events.history.value,
              events.history.againstFirst,
              events.history.verdict,
              events.history.fate,
              events.history.witness,
            ]}
          />
          <tbody>
            <For each={history()}>
              {(each) => (
                <tr class={each.status} aria-current={each.seq === props.reading.seq ? 'true' : undefined}>
                  <td>
                    <button type="button" onClick={() => props.onGo(each.seq)}>
                      {each.seq}
                    </button>
                  </td>
                  <td>
                    <Value reading={each} />
                  </td>
                  <td>{each === first() ? events.history.first : differenceFrom(first().reading, each.reading)}</td>
                  <td>{events.history.verdicts[each.verdict]}</td>
                  <td>{fates[fateOf(each, history())]}</td>
                  <td>{witnessText(each)}</td>
                </tr>
              )}
            </For>
          </tbody>
        </table>
      </div>
    </Show>
  );
}

function Value(props: { readonly reading: Reading }): JSX.Element {
  const text = () => `${props.reading.reading.value} ${props.reading.reading.unit}`;
  return (
    <Show when={props.reading.status === 'confirmed' || props.reading.status === 'captured'} fallback={<s>{text()}</s>}>
      {text()}
    </Show>
  );
}

function witnessText({ reading, witnessed }: Reading): string {
  if (!witnessed) return events.history.noWitness;
  const { value, unit } = witnessed.reading;
  return events.history.witnessed(witnessed.person, value, unit, differenceFrom(reading, witnessed.reading));
}
