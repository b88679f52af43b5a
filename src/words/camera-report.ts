/** What is said of a camera that sees no gestures: shorter than what the screen shows. */
import { said } from './said.ts';

export const cameraReport = said('cameraReport', {
  seesAgain: 'The camera sees again.',
  goOnOtherwise: (trouble: string) => `${trouble} Go on by voice, touch or keys.`,
  failed: {
    'page not secure': 'The camera cannot be used here.',
    'camera refused': 'The camera was refused.',
    'camera absent': 'There is no camera.',
    'camera busy': 'The camera cannot be opened.',
    'camera lost': 'The camera is lost.',
    'camera silent': 'The camera sends no pictures.',
    'watching stopped': 'Watching has stopped.',
    'watching unable': 'Gestures cannot be watched here.',
  },
  trouble: {
    covered: 'The camera is covered.',
    black: 'The camera sees only black.',
    frozen: 'The camera’s picture stands still.',
    slow: 'The camera is too slow: only a covered lens is seen.',
  },
});
