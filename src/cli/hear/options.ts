import { parseArgs } from 'node:util';
import { SITUATION_NAMES } from '../../language/named-situations.ts';
import { LONGEST_MINUTES } from './wav-file.ts';
import { RATES } from './wav-format.ts';

export const USAGE = `Usage: npm run hear -- [--phrases SITUATION|FILE] [--model FILE] [--json] FILE-OR-FOLDER…
Decodes recordings with the recogniser and the understanding of the app itself, in a browser without a window, and says
of each what was heard, with the time and confidence of each word, what it means, what the app would do about it, and how
long it would take to decide. Try it on your own voice.
  FILE-OR-FOLDER    WAV files, or folders of them: PCM of 8, 16, 24, 32 bits or float, ${RATES.least} to ${RATES.most} Hz, at most
                    ${LONGEST_MINUTES} minutes. Channels are averaged to one. A manifest (a .tsv file, or manifest.tsv in a folder) lists
                    recordings and what was said in them: tab-separated, its first line names the columns, at least file
                    (relative to the manifest) and transcript; with a column kind, the tables are by kind. Then word,
                    sentence and reading accuracy are told, which words were confused, and false accepts.
  --phrases         what may be said: a situation (default: reading, in the middle of tightening), one of
                    ${SITUATION_NAMES.slice(0, 7).join(', ')},
                    ${SITUATION_NAMES.slice(7, 15).join(', ')},
                    ${SITUATION_NAMES.slice(15).join(', ')};
                    or a JSON file with a list of phrases, each then accepted as a whole utterance and as nothing else
  --model FILE      the speech model, .tar.gz or .zip (default: the first in models/)
  --json            one object a line, and nothing else on standard output: file, text, words (word, start, end, conf),
                    intent, outcome, decisionMs, doneMs; with a manifest also transcript. A recording of several
                    utterances has utterances too; its intent, outcome and times are of the first accepted, else asked
                    (npm writes two lines of its own first; npm run --silent hear leaves them out)
outcome: accepted: it is carried out, and a reading read back; asked: it is questioned before it counts; refused: it does
nothing here. Each utterance is judged by itself; none moves the job on.
start, end: seconds from the beginning of the recording.
decisionMs: from the end of speech to when the decision that stood was shown, in milliseconds, as if the recording were
being spoken now: the time in the sound, and the time that this machine takes to decode and understand (longer while it is
busy with other work). doneMs: the same to when it was carried out; later only for a number that might have gone on, which
is shown at once and written down and read back when nothing has followed. The end of speech is read off the energy of the
recording itself: the end of the last 10 ms, not later than 0.25 s after the last word heard, that are louder than halfway
(in dB) between the quiet and the loudest parts. It is less than 0 for a decision before that, and null where nothing stands out.
0.4 s of quiet are put before each recording; after it, quiet goes on until the utterance has ended, for at most 4 s.
The table of a manifest: words that were right, changed, lost, added; sentences right as a whole, where anything was said.
Readings understood as the one that was said; else wrong: another was accepted; else asked: there was a question; else
missed. False accepts: recordings accepted as what was not said, of those that mean something else here (other) and of
those that mean nothing. Its last line is of the recordings whose every word is in a phrase: others can only be refused.
Exit code 0: all decoded; 1: some were refused, each with its reason on standard error; 2: not used as above, or the
browser or the model cannot be used.`;

export interface Options {
  /** As given: a situation or a file. */
  readonly phrases: string;
  /** null: the one that comes with the app. */
  readonly model: string | null;
  readonly json: boolean;
  readonly help: boolean;
  readonly names: readonly string[];
}

export function optionsOf(args: readonly string[]): Options | { readonly trouble: string } {
  try {
    const { values, positionals: names } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        phrases: { type: 'string', default: 'reading' },
        model: { type: 'string' },
        json: { type: 'boolean', default: false },
        help: { type: 'boolean', short: 'h', default: false },
      },
    });
    const { phrases, model = null, json, help } = values;
    if (names.length === 0 && !help) return { trouble: 'Name a recording, a folder or a manifest.' };
    return { phrases, model, json, help, names };
  } catch (error) {
    if (error instanceof TypeError) return { trouble: error.message };
    throw error;
  }
}
