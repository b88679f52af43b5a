/**
 * All words that the interface shows or speaks, by part. English stands in the files of the parts. Another language is one
 * file more, `languages/xx.ts`, that exports `words` of this type; the compiler tells what it lacks.
 */
import type { camera } from './camera.ts';
import type { checkScreen } from './check-screen.ts';
import type { displayScreen } from './display-screen.ts';
import type { openedRecord } from './opened-record.ts';
import type { practice } from './practice.ts';
import type { preparePage } from './prepare-page.ts';
import type { sealedFile } from './sealed-file.ts';
import type { secondScreen } from './second-screen.ts';
import type { startScreen } from './start-screen.ts';
import type { touch } from './touch.ts';
import type { ways } from './ways.ts';
import type { workScreen } from './work-screen.ts';

export interface Words {
  readonly camera: typeof camera;
  readonly checkScreen: typeof checkScreen;
  readonly displayScreen: typeof displayScreen;
  readonly openedRecord: typeof openedRecord;
  readonly practice: typeof practice;
  readonly preparePage: typeof preparePage;
  readonly sealedFile: typeof sealedFile;
  readonly secondScreen: typeof secondScreen;
  readonly startScreen: typeof startScreen;
  readonly touch: typeof touch;
  readonly ways: typeof ways;
  readonly workScreen: typeof workScreen;
}
