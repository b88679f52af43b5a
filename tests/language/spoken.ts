import { announce } from '../../src/language/announce.ts';
import { happened, type Play } from '../session/play.ts';

/** What is spoken after the last meaning. */
export const spoken = (play: Play): readonly string[] =>
  announce(play.state, play.last.kind === 'accepted' ? happened(play) : play.events.slice(-1).map(({ body }) => body));
