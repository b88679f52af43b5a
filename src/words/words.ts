/**
 * All words that the interface shows or speaks, by part. English stands in the files of the parts. Another language is one
 * file more, `languages/xx.ts`, that exports `words` of this type; the compiler tells what it lacks.
 */
import type { asked } from './asked.ts';
import type { buttons } from './buttons.ts';
import type { camera } from './camera.ts';
import type { checkScreen } from './check-screen.ts';
import type { displayScreen } from './display-screen.ts';
import type { ear } from './ear.ts';
import type { held } from './held.ts';
import type { lines } from './lines.ts';
import type { measured } from './measured.ts';
import type { microphone } from './microphone.ts';
import type { openedRecord } from './opened-record.ts';
import type { patternPlan } from './pattern-plan.ts';
import type { people } from './people.ts';
import type { practice } from './practice.ts';
import type { preparePage } from './prepare-page.ts';
import type { sealedFile } from './sealed-file.ts';
import type { secondScreen } from './second-screen.ts';
import type { secondWindow } from './second-window.ts';
import type { signing } from './signing.ts';
import type { startScreen } from './start-screen.ts';
import type { touch } from './touch.ts';
import type { valueKeys } from './value-keys.ts';
import type { wanted } from './wanted.ts';
import type { ways } from './ways.ts';
import type { workScreen } from './work-screen.ts';

export interface Words {
  readonly asked: typeof asked;
  readonly buttons: typeof buttons;
  readonly camera: typeof camera;
  readonly checkScreen: typeof checkScreen;
  readonly displayScreen: typeof displayScreen;
  readonly ear: typeof ear;
  readonly held: typeof held;
  readonly lines: typeof lines;
  readonly measured: typeof measured;
  readonly microphone: typeof microphone;
  readonly openedRecord: typeof openedRecord;
  readonly patternPlan: typeof patternPlan;
  readonly people: typeof people;
  readonly practice: typeof practice;
  readonly preparePage: typeof preparePage;
  readonly sealedFile: typeof sealedFile;
  readonly secondScreen: typeof secondScreen;
  readonly secondWindow: typeof secondWindow;
  readonly signing: typeof signing;
  readonly startScreen: typeof startScreen;
  readonly touch: typeof touch;
  readonly valueKeys: typeof valueKeys;
  readonly wanted: typeof wanted;
  readonly ways: typeof ways;
  readonly workScreen: typeof workScreen;
}
