import { demoEntries } from '../../../src/cli/demo-session.ts';
import { recordIn } from '../../record/sealed.ts';

const entries = await demoEntries();
/** The demonstration session, as it is played: 108 entries. */
export const demo = await recordIn(entries, entries[0]?.session);
