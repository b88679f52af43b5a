import { createEffect, createMemo, createSignal, onCleanup, type Accessor } from 'solid-js';
import { DISPLAY_AT_FIRST, loadDisplay, saveDisplay, type DisplayChoice } from '../storage/display.ts';
import { ASSUMED_PIXELS_PER_MM, fontSizeFor, GLANCE, LEAST, type Letters } from './view/legible.ts';

/** How the screen of this device is looked at. */
export interface Display {
  readonly choice: Accessor<DisplayChoice>;
  /** What the letters of this screen measure now, in CSS pixels. */
  readonly letters: Accessor<Letters>;
  /** Changes it, here and on this device. */
  change(part: Partial<DisplayChoice>): void;
  /** Takes a length on this screen, in CSS pixels, for a length of the world, in millimetres. */
  calibrate(pixels: number, millimetres: number): void;
}

/**
 * The choice that this device keeps, laid upon the page: its theme, and as CSS lengths `--mm`, a millimetre of this screen,
 * `--glance` and `--least`, the font sizes for the viewing distance.
 */
export function createDisplay(): Display {
  const [choice, setChoice] = createSignal(DISPLAY_AT_FIRST);
  void loadDisplay().then(setChoice);
  // The zoom of the browser changes how many pixels of the device make one of CSS.
  const [zoom, setZoom] = createSignal(devicePixelRatio);
  const look = (): void => void setZoom(devicePixelRatio);
  window.addEventListener('resize', look);
  onCleanup(() => window.removeEventListener('resize', look));

  const digitRatio = measuredDigitRatio();
  const letters = createMemo((): Letters => {
    const { pixelsPerMm } = choice();
    return { pixelsPerMm: pixelsPerMm === null ? ASSUMED_PIXELS_PER_MM : pixelsPerMm / zoom(), digitRatio };
  });
  createEffect(() => {
    const { style, dataset } = document.documentElement;
    const { theme, distance } = choice();
    if (theme === 'as the device') delete dataset['theme'];
    else dataset['theme'] = theme;
    style.setProperty('--mm', `${letters().pixelsPerMm}px`);
    style.setProperty('--glance', `${fontSizeFor(distance, GLANCE, letters())}px`);
    style.setProperty('--least', `${fontSizeFor(distance, LEAST, letters())}px`);
  });
  const change = (part: Partial<DisplayChoice>): void =>
    void saveDisplay(setChoice((before) => ({ ...before, ...part })));
  return {
    choice,
    letters,
    change,
    calibrate: (pixels, millimetres) => change({ pixelsPerMm: (pixels * zoom()) / millimetres }),
  };
}

/** The lowest digit of the face that this device writes with, as a part of its font size. */
function measuredDigitRatio(): number {
  const SIZE = 200;
  const pen = document.createElement('canvas').getContext('2d');
  if (!pen) return USUAL_DIGIT_RATIO;
  pen.font = `750 ${SIZE}px ${getComputedStyle(document.documentElement).fontFamily}`;
  return Math.min(...[...'0123456789'].map((digit) => pen.measureText(digit).actualBoundingBoxAscent)) / SIZE;
}

const USUAL_DIGIT_RATIO = 0.7;
