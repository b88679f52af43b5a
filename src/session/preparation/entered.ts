/** What is found, measured and said before the first step, as it stands in the fields of a page: text as it was typed. */
import type { Handling } from '../../lifting/index.ts';

export interface Entered {
  readonly mechanic: string;
  /** '' where nobody is named. */
  readonly second: string;
  /** Others who take part, their names apart by commas. */
  readonly helpers: string;
  /** The mechanic's word that document, revision and date are those of the current approved data. */
  readonly isCurrentData: boolean;
  /** Questions about the unit that are answered already, by their id. The others are asked in the work. */
  readonly conditions: ReadonlyMap<string, boolean>;
  /** The last day of validity as it stands on the label of a tool, by the tool's id. */
  readonly calibrations: ReadonlyMap<string, string>;
  /** The measured length of an adapter in the unit of the file, by the adapter's id. */
  readonly adapters: ReadonlyMap<string, string>;
  /** The day until which a consumable may be used, by its id. */
  readonly expiries: ReadonlyMap<string, string>;
  /** What the container that stands here holds, in the unit of the file; '' where it is the one of the file. */
  readonly capacity: string;
  /** How the weight is carried; null where it is not said yet. */
  readonly handling: Handling | null;
  /** The hazards that were acknowledged, by their keys. */
  readonly hazards: ReadonlySet<string>;
}

/** Nothing but who works. */
export const enteredNothing = (mechanic: string, second: string): Entered => ({
  mechanic,
  second,
  helpers: '',
  isCurrentData: false,
  conditions: new Map(),
  calibrations: new Map(),
  adapters: new Map(),
  expiries: new Map(),
  capacity: '',
  handling: null,
  hazards: new Set(),
});

/** How fit a person's voice was found at their last microphone check. */
export interface MicrophoneCheck {
  readonly person: string;
  readonly fitness: 'fit' | 'fit with care' | 'do not start by voice';
  /** RFC 3339, UTC. */
  readonly at: string;
}

/** What is not typed and yet seen: the day, and how the people were heard. */
export interface Circumstances {
  /** 'YYYY-MM-DD' */
  readonly day: string;
  readonly microphones: readonly MicrophoneCheck[];
}
