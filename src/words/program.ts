/** The program itself: while it opens, its version, and what it lacks in this browser. */
import { said } from './said.ts';

const NO_ENGINE = 'Speech recognition and the built-in voice do not run. Touch, keys and typing go on working.';

export const program = said('program', {
  opening: 'Opening…',
  cannotOpen: (why: string) => `Bothhands cannot open its record on this device: ${why}`,
  partNotFetched: (why: string) => `This part of Bothhands could not be fetched: ${why}`,
  loadAgain: 'Load the page again',

  thisProgram: 'This program',
  version: (version: string) => `Version ${version}.`,
  lacksNothing: 'This browser has all that Bothhands needs.',
  newerIsReady: 'A newer version is ready. It is taken between sessions only.',
  takeNow: 'Take it now',
  later: 'Later',
  takenWhenClosed: 'It is taken once all windows of Bothhands are closed.',
  sessionIsOpen: 'Not now: a session is open in another window. Leave it there first.',

  browserLacks: 'This browser lacks:',
  /** What does not work without a part of the browser, and what still does. */
  without: {
    'secure context':
      'The page must come from this machine (localhost) or over https: otherwise there is no record, no microphone and no camera.',
    IndexedDB: 'No record can be kept.',
    'Web Locks': 'Two windows could write into the same record.',
    'Web Crypto': 'No entry can be sealed.',
    WebAssembly: NO_ENGINE,
    'Web Workers': NO_ENGINE,
    getUserMedia: 'There is no microphone and no camera. Touch, keys and typing go on working.',
    AudioWorklet: 'It cannot listen. Touch, keys and typing go on working.',
    'Web Audio': 'It makes no sound of its own. The screen shows all that is said.',
    'Service Worker': 'It does not start without the network.',
    BroadcastChannel: 'The second person has no window of their own.',
    'Screen Wake Lock': 'The screen may go dark: set the device not to sleep.',
    OffscreenCanvas: 'Gestures before the camera are not watched.',
    'persistent storage': 'The browser may clear records when space runs out: save each session as a sealed file.',
  },
});
