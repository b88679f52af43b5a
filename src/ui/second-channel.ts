/**
 * What passes between the window that holds the pen of a session and the second person's window, on one machine. Only
 * pages of this origin can speak here; what they say is from outside all the same, and is believed only after the door.
 */
import * as v from 'valibot';
import { Count, IN_WORDS } from '../record/exactly.ts';
import { SecondMeaningSchema } from '../record/input-schema.ts';
import { isWellFormed } from '../session/intent.ts';
import { LONGEST_NAME } from '../session/people.ts';
import { secondWindow } from '../words/second-window.ts';

const Id = v.pipe(v.string(), v.uuid());

const Meant = v.pipe(
  SecondMeaningSchema,
  v.check(
    (meaning) => meaning.kind !== 'witness' || isWellFormed(meaning.reading),
    () => secondWindow.expectedValue,
  ),
  v.check(
    (meaning) =>
      (meaning.kind !== 'second person' && meaning.kind !== 'inspects') || (meaning.name?.length ?? 0) <= LONGEST_NAME,
    () => secondWindow.expectedName(LONGEST_NAME),
  ),
);

const FromSecondSchema = v.variant('kind', [
  /** Does a window work on this session? */
  v.strictObject({ kind: v.literal('ping') }),
  /** `seen` is the newest entry that the second person had before them: a word about what is gone does not count. */
  v.strictObject({ kind: v.literal('meaning'), id: Id, seen: Count, meaning: Meant }),
]);

const FromDeskSchema = v.variant('kind', [
  v.strictObject({ kind: v.literal('here'), seq: Count }),
  v.strictObject({ kind: v.literal('changed'), seq: Count }),
  /** What became of a meaning, with the sentence that was said. */
  v.strictObject({ kind: v.literal('answer'), id: Id, taken: v.boolean(), sentence: v.string() }),
]);

export type FromSecond = v.InferOutput<typeof FromSecondSchema>;
export type FromDesk = v.InferOutput<typeof FromDeskSchema>;
export type Answer = Pick<Extract<FromDesk, { kind: 'answer' }>, 'taken' | 'sentence'>;

/** One end of the channel of a session. */
export interface End<Sent> {
  /** Does nothing once the end is closed. */
  post(message: Sent): void;
  close(): void;
}

interface Reception<Received> {
  readonly receive: (message: Received) => void;
  /** Something came that is no message: why, with the place in it. It does nothing else. */
  readonly drop: (why: string) => void;
}

/** The end at the window that holds the pen. */
export const openDeskEnd = (session: string, reception: Reception<FromSecond>): End<FromDesk> =>
  openEnd(session, FromSecondSchema, FromDeskSchema, reception);

/** The end at the second person's window. */
export const openSecondEnd = (session: string, reception: Reception<FromDesk>): End<FromSecond> =>
  openEnd(session, FromDeskSchema, FromSecondSchema, reception);

type Schema<Message> = v.GenericSchema<unknown, Message>;

function openEnd<Sent, Received>(
  session: string,
  received: Schema<Received>,
  sent: Schema<Sent>,
  { receive, drop }: Reception<Received>,
): End<Sent> {
  const channel = new BroadcastChannel(`bothhands:${session}`);
  let isOpen = true;
  channel.onmessage = ({ data }: MessageEvent<unknown>) => {
    if (!isOpen) return;
    const message = v.safeParse(received, data, IN_WORDS);
    if (message.success) receive(message.output);
    // Everybody hears everything: what another window of this side said is for the other side.
    else if (!v.is(sent, data)) drop(whyOf(message.issues[0]));
  };
  channel.onmessageerror = () => drop(secondWindow.unreadable);
  return {
    post: (message) => {
      if (isOpen) channel.postMessage(message);
    },
    close: () => {
      isOpen = false;
      channel.close();
    },
  };
}

/** "meaning.reading.value: Expected …", or only the message where it is about the whole. */
function whyOf(issue: v.BaseIssue<unknown>): string {
  const place = v.getDotPath(issue);
  return `${place === null ? '' : `${place}: `}${issue.message}`;
}
