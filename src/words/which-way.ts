/** Teach and try: which way up the camera's picture comes. */
import { said } from './said.ts';

export const whichWay = said('whichWay', {
  how: 'A camera that hangs upside down takes a wave to the right for one to the left: at work, the first wave asks, and a no turns the picture. A mirror’s picture is told here. A camera that lies on its side takes a nod for a shake, sometimes a shake for a nod, and sees no wave: turn it upright.',
  upsideDown: 'The camera hangs upside down',
  mirrored: 'The camera gives its picture as a mirror does',
});
