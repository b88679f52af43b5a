/**
 * How large letters must be to be read from where the eyes are. Heights in millimetres, of a capital or a digit, not of
 * its line; distances in metres; visual angles in arc minutes.
 */

/**
 * Visual angle of what is read at a glance: the upper end of the preferred 20′ to 22′ (NUREG-0700, 1.3.1-4), and of what
 * may be read with a second look, the least that it allows.
 */
export const GLANCE = 22;
export const LEAST = 16;

/** From where a work screen is read, and how near or far it may be set. */
export const DISTANCE = { default: 3, least: 0.5, most: 5, step: 0.5 } as const;

/** What CSS takes for granted, 96 pixels an inch. Few screens have it: it stands until a ruler was held to the screen. */
export const ASSUMED_PIXELS_PER_MM = 96 / 25.4;

const RADIANS = Math.PI / (180 * 60);

/** The height in millimetres that is seen under an angle: H = 2·D·tan(α/2). */
export const letterHeight = (distance: number, angle: number): number =>
  2 * distance * 1000 * Math.tan((angle * RADIANS) / 2);

/** The angle in arc minutes under which a height is seen. */
export const visualAngle = (height: number, distance: number): number =>
  (2 * Math.atan(height / (2 * distance * 1000))) / RADIANS;

/** How far away, in metres, a height is still seen under an angle. */
export const legibleFrom = (height: number, angle: number): number =>
  height / (2 * 1000 * Math.tan((angle * RADIANS) / 2));

export interface Letters {
  /** CSS pixels to a millimetre of this screen. */
  readonly pixelsPerMm: number;
  /** Height of a digit as a part of the font size: 0.7 to 0.75 in most faces. */
  readonly digitRatio: number;
}

/** The font size in CSS pixels whose digits are seen under an angle. Digits are drawn in whole pixels: no less than that. */
export const fontSizeFor = (distance: number, angle: number, { pixelsPerMm, digitRatio }: Letters): number =>
  Math.ceil(letterHeight(distance, angle) * pixelsPerMm - HAIR) / digitRatio;

/** How far away the digits of a font size, in CSS pixels, are still seen under an angle as they are drawn; in metres. */
export const reachOf = (fontSize: number, angle: number, { pixelsPerMm, digitRatio }: Letters): number =>
  legibleFrom(Math.floor(fontSize * digitRatio + HAIR) / pixelsPerMm, angle);

/** What browsers lose of a font size when they write it down, in pixels. */
const HAIR = 0.01;

/** What everybody has at hand to measure a screen with: its length in millimetres. Cards: ISO/IEC 7810, format ID-1. */
export const RULERS = [
  { is: 'short side of a card', length: 53.98 },
  { is: 'long side of a card', length: 85.6 },
  { is: '5 cm', length: 50 },
  { is: '20 cm', length: 200 },
] as const;
