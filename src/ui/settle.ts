/**
 * For this long after the screen has changed, in milliseconds, a touch or a key was meant for what stood there before:
 * a second tap of a double tap must not acknowledge what nobody has read.
 */
export const SETTLE = 300;
