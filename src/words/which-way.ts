/** Teach and try: which way up the camera's picture comes, and how somebody finds out. */
import { said } from './said.ts';

export const whichWay = said('whichWay', {
  check: 'Check left and right',
  how: 'A camera that hangs upside down takes a wave to the right for one to the left. One wave tells; at work, the first wave asks. One that lies on its side takes a nod for a shake and sees no wave: turn it upright.',
  now: 'Now wave once to your own right, across the whole picture.',
  asTheyAre: 'Right: a wave to the right is seen as one.',
  changedOver:
    'Wrong way round: your wave to the right was seen as one to the left. The camera hangs upside down, or gives its picture as a mirror does: tick which, and check again.',
  upsideDown: 'The camera hangs upside down',
  mirrored: 'The camera gives its picture as a mirror does',
});
