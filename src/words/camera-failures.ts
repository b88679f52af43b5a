/** What can go wrong with the camera: what happened, and what to do. */
import { said } from './said.ts';

const GO_ON = 'Voice, touch and keys go on working.';

export const cameraFailures = said('cameraFailures', {
  'page not secure': `Browsers give a page the camera only when it comes from this machine (localhost) or over https. ${GO_ON}`,
  'camera refused': `The browser does not let this page use the camera. Allow it in the page’s site settings. ${GO_ON}`,
  'camera absent': `No camera was found. Plug one in; it is picked up by itself. ${GO_ON}`,
  'camera busy': `The camera cannot be opened: there is none, or another program is using it. Plug one in or close that program, then turn the camera on again. ${GO_ON}`,
  'camera lost': `The camera was disconnected. Plug it in again; it is picked up by itself. ${GO_ON}`,
  'camera silent': `The camera sends no pictures. See whether it is switched off, closed or unplugged. ${GO_ON}`,
  'watching stopped': `The program that looks for gestures stopped and is being started again. ${GO_ON}`,
  'watching unable': `This browser cannot look at camera pictures beside the page. ${GO_ON}`,
});
