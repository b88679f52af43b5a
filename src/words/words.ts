/**
 * All words that the interface shows or speaks, by part. English stands in the files of the parts. Another language is one
 * file more, `languages/xx.ts`, that exports `words` of this type; the compiler tells what it lacks.
 */
import type { camera } from './camera.ts';
import type { practice } from './practice.ts';
import type { preparePage } from './prepare-page.ts';
import type { touch } from './touch.ts';

export interface Words {
  readonly camera: typeof camera;
  readonly practice: typeof practice;
  readonly preparePage: typeof preparePage;
  readonly touch: typeof touch;
}
