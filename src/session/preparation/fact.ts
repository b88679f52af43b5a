/** What was found and said before the first step, as facts of the record. */
import type { Handling } from '../../lifting/index.ts';
import type { Written } from '../../units/index.ts';
import type { MicrophoneCheck } from './entered.ts';

/** One fact each, so that an auditor finds it by its name and sees who stated it. */
export type PreparedFact =
  /** The mechanic compared the procedure with the register: it is the current approved data. */
  | {
      readonly of: 'approved data';
      readonly document: string;
      readonly revision: string;
      readonly issued: string | null;
    }
  /** Somebody who takes part besides the mechanic and the second person. */
  | { readonly of: 'helper'; readonly name: string }
  | {
      readonly of: 'tool';
      readonly tool: string;
      /** The last day on which its calibration holds; null where none is known. */
      readonly calibrationDue: string | null;
      readonly from: 'label' | 'procedure file';
    }
  /** Settings are worked out with this length. */
  | {
      readonly of: 'adapter';
      readonly adapter: string;
      readonly measured: Written<'length'>;
      readonly filed: Written<'length'>;
    }
  | { readonly of: 'consumable'; readonly consumable: string; readonly expires: string }
  | {
      readonly of: 'container';
      readonly capacity: Written<'volume'>;
      /** What may drain, with the margin. */
      readonly needed: Written<'volume'>;
      readonly from: 'here' | 'procedure file';
    }
  | {
      readonly of: 'lift';
      readonly handling: Handling;
      /** Dry mass and retained fluid. */
      readonly load: Written<'mass'>;
      /** Recommended for one person by the lifting equation, at the worse end. */
      readonly limit: Written<'mass'>;
      readonly least: Handling;
    }
  | { readonly of: 'hazard'; readonly step: string; readonly index: number }
  | ({ readonly of: 'microphone' } & MicrophoneCheck)
  /** The work was begun in spite of it. */
  | { readonly of: 'warning'; readonly sentence: string };
