/** Looks at camera pictures beside the page. Each is made small and grey, looked at, and gone: none is kept or sent on. */
import { HEIGHT, WIDTH, type Frame } from './frame.ts';
import { greyOf } from './grey.ts';
import { createWatcher } from './watcher.ts';
import type { WatchReply, WatchRequest } from './watch-messages.ts';

const canvas = new OffscreenCanvas(WIDTH, HEIGHT);
const context = canvas.getContext('2d', { willReadFrequently: true, alpha: false });
let watcher = createWatcher();

addEventListener('message', ({ data }: MessageEvent<WatchRequest>) => {
  if (data.kind === 'begin') watcher = createWatcher(data.options);
  else postMessage(look(data));
});

function look({ picture, time }: Extract<WatchRequest, { kind: 'picture' }>): WatchReply {
  if (!context) throw new Error('There is no canvas to look at pictures with.');
  context.drawImage(picture, 0, 0, WIDTH, HEIGHT);
  picture.close();
  const { data } = context.getImageData(0, 0, WIDTH, HEIGHT);
  const frame: Frame = { width: WIDTH, height: HEIGHT, luma: greyOf(data) };
  const seen = watcher.see(frame, time);
  return {
    gesture: seen.kind === 'gesture' ? seen.gesture : null,
    refused: seen.kind === 'refused' ? seen.why : null,
    trouble: watcher.trouble,
  };
}
