import type { JSX } from 'solid-js';
import type { Shape } from './time-line.ts';

/** Drawn around 0, from −7 to 7: told apart without colour. */
const PATHS: Readonly<Record<Shape, string>> = {
  step: 'M-1.5 -7H1.5V7H-1.5Z',
  reading: 'M0 -5A5 5 0 1 1 0 5A5 5 0 1 1 0 -5Z',
  outside: 'M0 -7L7 6H-7Z',
  correction: 'M-6 -6H6V6H-6ZM-6 6L6 -6',
  doubt: 'M0 -7.5L7.5 0L0 7.5L-7.5 0ZM-2 -2Q-2 -4 0 -4Q2 -4 2 -2Q2 -0.5 0 0V1.5M0 3V4',
  refusal: 'M-5 -5L5 5M-5 5L5 -5',
  deviation: 'M-3.5 -7H3.5L7 0L3.5 7H-3.5L-7 0ZM0 -4V1.5M0 3V4.5',
  hold: 'M-5 -6H-1.5V6H-5ZM1.5 -6H5V6H1.5Z',
  interruption: 'M2 -7L-4 1H0L-2 7L4 -1H0Z',
};

export const ShapePath = (props: { readonly shape: Shape }): JSX.Element => (
  <path class={`shape ${props.shape}`} d={PATHS[props.shape]} />
);
