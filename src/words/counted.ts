/** "1 entry", "12 entries". */
export const entriesCounted = (entries: number): string => (entries === 1 ? '1 entry' : `${entries} entries`);

/** Of a record that is whole. */
export const entriesFollow = (entries: number): string =>
  entries === 1 ? '1 entry' : `${entries} entries, each linked to the one before`;
