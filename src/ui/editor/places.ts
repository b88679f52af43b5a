/** Free places as lines of "x, y", and back. */
import { isFields, isList, type Json } from '../../procedure/edit/draft.ts';
import type { Notation } from '../../procedure/edit/typed.ts';

const LINE = /^\s*(\S+?)\s*(?:[,;]\s*|\s+)(\S+)\s*$/u;

/** A place a line, x to the right and y down. A line that holds no two numbers keeps all of it as it was typed. */
export const places: Notation = {
  read(typed) {
    const lines = typed.split('\n').filter((line) => line.trim() !== '');
    if (lines.length === 0) return null;
    const found = lines.flatMap((line): Json[] => {
      const [, x, y] = LINE.exec(line) ?? [];
      return x === undefined || y === undefined ? [] : [{ x, y }];
    });
    return found.length === lines.length ? found : typed;
  },
  show(json) {
    if (!isList(json)) return typeof json === 'string' ? json : '';
    return json
      .map((place) => (isFields(place) ? `${shown(place.x)}, ${shown(place.y)}` : JSON.stringify(place)))
      .join('\n');
  },
};

const shown = (json: Json | undefined): string => (typeof json === 'string' ? json : JSON.stringify(json ?? ''));
