/**
 * What must not grow faster than the work, and how long an auditor waits: `npm run bench`. Ratios say the same on any
 * machine; milliseconds and megabytes are of this one.
 */
import { fileURLToPath } from 'node:url';
import { benchRecord } from './bench/record.ts';
import { benchSession } from './bench/session.ts';
import { benchBrowser } from './bench/browser.ts';
import { benchFiles } from './bench/files.ts';
import { benchInteraction } from './bench/interaction.ts';
import { benchWatching } from './bench/watching.ts';
import { machine } from './bench/measure.ts';

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  console.log(machine());
  benchSession();
  benchWatching();
  await benchRecord();
  await benchBrowser();
  await benchFiles();
  await benchInteraction();
}
