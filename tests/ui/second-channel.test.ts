/** The second person's window and the window that holds the pen, over a real channel. */
import { createRoot } from 'solid-js';
import { afterEach, beforeEach, describe, expect, onTestFinished, test, vi } from 'vitest';
import type { SecondMeaning } from '../../src/record/input-schema.ts';
import { openSecondDesk, type SecondDesk } from '../../src/ui/second-desk.ts';
import { openSecondLink, type SecondLink } from '../../src/ui/second-link.ts';
import { newtonMetres } from '../session/play.ts';
import { smallProcedure } from '../support/small-procedure.ts';
import { GoodBook, open, settle, stopClock, typed, type Bench } from './bench.ts';

// Node gets Solid's server build, whose signals tell nobody; the app runs on the one for browsers.
vi.mock('solid-js', () => vi.importActual('solid-js/dist/solid.js'));

// A touch counts as an answer to what is shown only a while after it is; that time passes when the test says so.
beforeEach(stopClock);
afterEach(() => void vi.useRealTimers());

const [, tighten, look] = smallProcedure.steps;
const witnessed = {
  ...smallProcedure,
  steps: [
    { ...tighten, confirm: 'witness each' },
    { ...look, kind: 'witness', what: 'the cover' },
  ],
};

let sessions = 0;
interface Meeting extends Bench {
  readonly book: GoodBook;
  readonly desk: SecondDesk;
  readonly link: SecondLink;
  readonly session: string;
}

const owned = <Made>(make: () => Made): Made =>
  createRoot((dispose) => {
    onTestFinished(dispose);
    return make();
  });

/** Both windows on one session, both ready. */
async function meet(): Promise<Meeting> {
  const session = `session ${sessions++}`;
  const book = new GoodBook();
  const bench = await open(book, {}, witnessed);
  const desk = owned(() => openSecondDesk(session, bench.live));
  const link = owned(() => openSecondLink(session));
  await vi.waitFor(() => expect(link.worker()).toBe('there'));
  settle();
  return { ...bench, book, desk, link, session };
}

const reads = (value: string, fastener: number | null = 1): SecondMeaning => ({
  kind: 'witness',
  reading: { fastener, value },
});

async function send({ live, link }: Meeting, meaning: SecondMeaning) {
  settle();
  return link.send(meaning, live.entries().length - 1);
}

describe('what the second person means', () => {
  const goneOn = { taken: false, sentence: 'The work went on just before that came, so it is not taken. Look again.' };

  test('is carried out and written as theirs, and answered with what was said', async () => {
    const meeting = await meet();
    await meeting.live.hear(typed('12.5'), 'key');
    meeting.said();
    const answer = await send(meeting, reads('12.5'));
    expect(answer).toEqual({
      taken: true,
      sentence: 'Bolt one, one two point five, witness, one two point five. Is that correct?',
    });
    expect(meeting.said()).toBe(answer?.sentence);
    expect(meeting.live.entries().at(-1)).toMatchObject({
      person: 'Second person',
      source: 'touch',
      body: { kind: 'witnessed', reading: newtonMetres('12.5') },
    });
    await vi.waitFor(() => expect(meeting.link.newest()).toBe(meeting.live.entries().length - 1));
  });
  test('is told to be in dispute where it differs', async () => {
    const meeting = await meet();
    await meeting.live.hear(typed('12.5'), 'key');
    const answer = await send(meeting, reads('11'));
    expect(answer?.taken).toBe(true);
    expect(answer?.sentence).toMatch(/^Stop\. The two values of bolt one differ\. Both read again\./);
  });
  test('is refused with the reason, and the refusal is in the record', async () => {
    const meeting = await meet();
    expect(await send(meeting, reads('12'))).toEqual({ taken: false, sentence: 'There is nothing to witness.' });
    expect(await send(meeting, { kind: 'second person', name: ' mechanic ' })).toEqual({
      taken: false,
      sentence: 'The mechanic cannot witness their own work. Name another person.',
    });
    expect(meeting.live.entries().slice(-2)).toMatchObject([
      { body: { kind: 'refused', reason: { code: 'nothing to witness' } } },
      { body: { kind: 'refused', reason: { code: 'doer is no witness' } } },
    ]);
  });
  test('does not count where the work went on since they looked', async () => {
    const meeting = await meet();
    const seen = meeting.live.entries().length - 1;
    await meeting.live.hear(typed('12.5'), 'key');
    settle();
    const before = meeting.live.entries();
    expect(await meeting.link.send(reads('12.5'), seen)).toEqual(goneOn);
    expect(meeting.live.entries()).toBe(before);
  });
  test('does not count where it comes in the same moment as a change', async () => {
    const meeting = await meet();
    await meeting.live.hear(typed('12.5'), 'key');
    const before = meeting.live.entries();
    expect(await meeting.link.send(reads('12.5'), before.length - 1)).toEqual(goneOn);
    expect(meeting.live.entries()).toBe(before);
  });
  test('is answered once the record is closed, and nothing is written to it', async () => {
    const meeting = await meet();
    for (const _ of [1, 3, 2]) {
      await meeting.live.hear(typed('12'), 'key');
      await meeting.live.hear(typed('witness 12'), 'key');
      await meeting.live.hear(typed('affirm'), 'key');
    }
    expect((await send(meeting, { kind: 'witness says', agrees: true }))?.taken).toBe(true);
    expect(meeting.live.state().phase).toBe('closed');
    const before = meeting.live.entries();
    expect(await send(meeting, { kind: 'second person', name: null })).toEqual({
      taken: false,
      sentence: 'The record is closed.',
    });
    expect(meeting.live.entries()).toBe(before);
  });
  test('is answered where nothing can be written any more', async () => {
    const session = `session ${sessions++}`;
    const bench = await open({ append: () => Promise.reject(new Error('disk full')) }, {}, witnessed);
    owned(() => openSecondDesk(session, bench.live));
    const link = owned(() => openSecondLink(session));
    settle();
    const answer = await link.send({ kind: 'second person', name: 'Ada' }, 0);
    expect(answer).toEqual({
      taken: false,
      sentence: 'This could not be written, so it does not count: disk full Load the page again.',
    });
  });
});

describe('at the door', () => {
  const id = '7a1f6f6e-4f0a-4c7e-9d3b-0d8f6a1c2b3d';
  const meant = (meaning: unknown) => ({ kind: 'meaning', id, seen: 0, meaning });

  test.each([
    ['the word of the mechanic', meant({ kind: 'affirm' })],
    ['a reading of the mechanic', meant({ kind: 'reading', reading: { fastener: 1, value: '12' } })],
    ['a handover', meant({ kind: 'take over', name: 'Ada' })],
    ['a value that no scale shows', meant(reads('-1'))],
    ['a value of many figures', meant(reads('1'.repeat(100)))],
    ['a name without end', meant({ kind: 'second person', name: 'a'.repeat(1000) })],
    ['more than is meant', meant({ kind: 'witness says', agrees: true, person: 'Ada' })],
    ['a word that is no answer', meant({ kind: 'witness says', agrees: 'yes' })],
    ['no number of an entry', { ...meant(reads('12')), seen: -1 }],
    ['text', 'affirm'],
    ['nothing', null],
  ])('is dropped, and that is shown: %s', async (_, message) => {
    const { desk, live, session, book } = await meet();
    const stranger = new BroadcastChannel(`bothhands:${session}`);
    onTestFinished(() => stranger.close());
    const before = live.entries();
    stranger.postMessage(message);
    await vi.waitFor(() => expect(desk.dropped()).toMatch(/that a second person cannot say; it was dropped/));
    expect(live.entries()).toBe(before);
    expect(book.appends).toEqual([]);
  });
  test('an answer that is none is dropped at the second window as well', async () => {
    const { link, session } = await meet();
    const stranger = new BroadcastChannel(`bothhands:${session}`);
    onTestFinished(() => stranger.close());
    stranger.postMessage({ kind: 'answer', id, taken: true });
    await vi.waitFor(() => expect(link.dropped()).toMatch(/not an answer; it was dropped.*sentence/));
  });
  test('what two second windows say is no trouble to one another', async () => {
    const meeting = await meet();
    const other = owned(() => openSecondLink(meeting.session));
    await vi.waitFor(() => expect(other.worker()).toBe('there'));
    await send(meeting, { kind: 'second person', name: 'Ada' });
    expect([meeting.link.dropped(), other.dropped(), meeting.desk.dropped()]).toEqual([null, null, null]);
    await vi.waitFor(() => expect(other.newest()).toBe(meeting.live.entries().length - 1));
  });
});

test('where no window works on the session, that is known, and known again when one comes', async () => {
  const session = `session ${sessions++}`;
  const link = owned(() => openSecondLink(session));
  expect(link.worker()).toBe('asking');
  await vi.waitFor(() => expect(link.worker()).toBe('gone'), { timeout: 5000 });
  const { live } = await open(new GoodBook(), {}, witnessed);
  owned(() => openSecondDesk(session, live));
  await vi.waitFor(() => expect(link.worker()).toBe('there'), { timeout: 5000 });
  expect(link.newest()).toBe(0);
});
