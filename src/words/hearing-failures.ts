/** What can go wrong with hearing: what happened, and what to do. */
import { said } from './said.ts';

const GO_ON = 'Touch, keys and typing go on working.';

export const hearingFailures = said('hearingFailures', {
  'page not secure': `Browsers let a page listen only when it comes from this machine (localhost) or over https. Open Bothhands that way. ${GO_ON}`,
  'microphone refused': `The browser does not let this page use the microphone. Allow it in the page’s site settings. ${GO_ON}`,
  'microphone absent': `No microphone was found. Plug one in; it is picked up by itself. ${GO_ON}`,
  'microphone busy': `The microphone cannot be opened: there is none, or another program is using it. Plug one in or close that program, then turn listening on again. ${GO_ON}`,
  'microphone lost': `The microphone was disconnected. Plug it in again; it is picked up by itself. ${GO_ON}`,
  'microphone silent': `The microphone sends nothing at all. See whether it is switched off, muted or unplugged. ${GO_ON}`,
  'microphone held': `The browser holds the sound back, as in a call, after a sleep, or before the first touch. Touch the screen once. ${GO_ON}`,
  'model unreachable': `The speech model could not be fetched. See that the server is running, or choose a model file from disk. ${GO_ON}`,
  'model not an archive': `That is not a speech model: it is neither a .tar.gz nor a .zip archive. Choose another file. ${GO_ON}`,
  'model checksum': `The speech model arrived damaged: its checksum is not the listed one. Load it again. ${GO_ON}`,
  'model unreadable': `The archive could not be read as a speech model: it is damaged, or holds something else. Choose another file. ${GO_ON}`,
  'model without phrase lists': `This speech model cannot be limited to a list of phrases, so it is not safe to use here. Choose a small model with a lookahead graph. ${GO_ON}`,
  'model timeout': `The speech model did not become ready in time. Close other programs and load it again, or choose a smaller model. ${GO_ON}`,
  'model not kept': `This browser no longer keeps the speech model. Load it again. ${GO_ON}`,
  'model no room': `The browser gave no room to keep the speech model. Free some disk space, or leave the private window, and load it again. ${GO_ON}`,
  'model load cancelled': `Loading the speech model was cancelled. ${GO_ON}`,
  'engine unreachable': `The program that recognises speech could not be fetched. See that the server is running, then load the page again. ${GO_ON}`,
  'engine stopped': `Hearing stopped answering and is being started again. ${GO_ON}`,
  'engine given up': `Hearing stopped answering several times and stays off. Load the page again to try once more. ${GO_ON}`,
});
