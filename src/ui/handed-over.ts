import { createSignal } from 'solid-js';
import { loadProcedure, type Procedure } from '../procedure/procedure.ts';

/** A sound procedure that another page gives to the start screen, to begin a job with it. */
export interface HandedOver {
  readonly file: string;
  readonly text: string;
  readonly procedure: Procedure;
}

const [handedOver, setHandedOver] = createSignal<readonly HandedOver[]>([]);

/** The procedure written last, as a list of one; an empty list as long as there is none. */
export { handedOver };

/** Gives the text of a procedure file to the start screen. @returns whether it is sound; only then is it taken */
export function handOver(text: string, file: string): boolean {
  const loaded = loadProcedure(text);
  if (loaded.kind === 'faulty') return false;
  setHandedOver([{ file, text, procedure: loaded.procedure }]);
  return true;
}
