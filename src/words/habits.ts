/** What is wrong with a person’s switches, touch or camera as they were set, and how it is mended. */
import { said } from './said.ts';

export const habits = said('habits', {
  giveMilliseconds: (least: number, most: number) => `Give ${least} to ${most} milliseconds.`,
  giveMillimetres: (least: number, most: number) => `Give ${least} to ${most} millimetres.`,

  keyNotBindable: 'This key belongs to the browser or to figures that are typed: choose another one.',
  chooseSignal: (signals: readonly string[]) => `Choose one of: ${signals.join(', ')}.`,
  pressTheSwitch: 'Press the switch, so that its key is known.',
  oneAtLeast: 'At least one switch is needed.',
  threeAtMost: 'Three switches at most: a foot finds no fourth.',
  sameKey: 'Two switches send the same key: what one means, the other would mean.',
  nothingGoesOn: 'No press goes on or picks: bind one of them to “forward” or “pick”.',
  nothingMovesLight: 'No press of these switches moves the light: set how long each choice is lit.',

  longBeforeResting: 'A long press must be shorter than a touch that rests.',
  pressBeforeSwipe: 'A press must slide less than a swipe.',

  howMuchSurer: 'Give 0 to 0.5: how much surer than usual.',
  regionInPicture:
    'The part that is watched must lie within the picture, and be at least a fifth of its width and height.',
});
