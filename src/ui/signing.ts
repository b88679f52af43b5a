/** How long the button is held to sign, in milliseconds. */
export const HELD_TO_SIGN = 2000;
