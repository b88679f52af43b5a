import { createSignal, type Accessor } from 'solid-js';
import { loadProcedure, type Procedure } from '../procedure/procedure.ts';

/** A demonstration procedure that lies beside the app, as the file that it is. Its values are invented. */
export interface Demo {
  readonly file: string;
  /** Null until it has come. */
  readonly come: Accessor<{ readonly text: string; readonly procedure: Procedure } | null>;
  /** Whether it could not be fetched, or is none. */
  readonly isLost: Accessor<boolean>;
  fetch(): Promise<void>;
}

const addresses = import.meta.glob<string>(['../../demo-data/*.json', '!../../demo-data/*.schema.json'], {
  query: '?url',
  import: 'default',
  eager: true,
});

/** All of them, in the order of their names; they are on their way as soon as this is asked for. */
export const demos: readonly Demo[] = Object.entries(addresses).map(([path, address]) => {
  const demo = demoAt(path.split('/').at(-1) ?? path, address);
  void demo.fetch();
  return demo;
});

function demoAt(file: string, address: string): Demo {
  const [come, setCome] = createSignal<ReturnType<Demo['come']>>(null);
  const [isLost, setLost] = createSignal(false);
  return {
    file,
    come,
    isLost,
    async fetch() {
      setLost(false);
      const text = await textAt(address);
      const loaded = text === null ? null : loadProcedure(text);
      if (text !== null && loaded?.kind === 'loaded') setCome({ text, procedure: loaded.procedure });
      else setLost(true);
    },
  };
}

/** Null where a line is gone, or the server has no such file. */
async function textAt(address: string): Promise<string | null> {
  try {
    const response = await fetch(address);
    return response.ok ? await response.text() : null;
  } catch {
    return null;
  }
}
