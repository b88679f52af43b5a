import { loadProcedure, type Procedure } from '../procedure/procedure.ts';

/** A demonstration procedure that comes with the app. Its values are invented. */
export interface Demo {
  readonly file: string;
  readonly text: string;
  readonly procedure: Procedure;
}

const files = import.meta.glob<string>(['../../demo-data/*.json', '!../../demo-data/*.schema.json'], {
  query: '?raw',
  import: 'default',
  eager: true,
});

export const demoProcedures: readonly Demo[] = Object.entries(files).flatMap(([path, text]) => {
  const loaded = loadProcedure(text);
  return loaded.kind === 'loaded' ? [{ file: path.split('/').at(-1) ?? path, text, procedure: loaded.procedure }] : [];
});
