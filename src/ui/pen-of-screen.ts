import { onCleanup } from 'solid-js';
import { takePen, type Pen } from '../storage/pen.ts';

/** The pen of a session, or of the draft, for as long as this screen is up, also where the screen is left before the pen arrives. */
export function createPen(session: string): () => Promise<boolean> {
  let pen: Pen | null = null;
  let isLeft = false;
  onCleanup(() => {
    isLeft = true;
    pen?.release();
  });
  return async () => {
    pen ??= await takePen(session);
    if (isLeft) pen?.release();
    return pen !== null && !isLeft;
  };
}
