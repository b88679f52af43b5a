/**
 * Local day and time to the second, in the order of ISO 8601 ("2026-03-01 00:05:10"): a day is read the same way
 * everywhere, and the hour after midnight is 00.
 * @param timeZone an IANA name; the zone of this device where none is given
 */
export function showMoment(utc: string, timeZone?: string): string {
  // Swedish order is ISO order.
  return new Intl.DateTimeFormat('sv-SE', {
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
    second: '2-digit',
    hourCycle: 'h23',
    ...(timeZone === undefined ? {} : { timeZone }),
  }).format(new Date(utc));
}

/** The zone that local times are in from some moment on: "UTC+01:00". */
export interface ZoneFrom {
  readonly utc: string;
  readonly zone: string;
}

/** The zones of local times in their order: more than one where clocks were put forward or back in between. */
export function zonesOf(times: readonly string[], timeZone?: string): readonly ZoneFrom[] {
  const format = new Intl.DateTimeFormat('en-GB', {
    timeZoneName: 'longOffset',
    ...(timeZone === undefined ? {} : { timeZone }),
  });
  const zones: ZoneFrom[] = [];
  for (const utc of times) {
    const name = format.formatToParts(new Date(utc)).find(({ type }) => type === 'timeZoneName')?.value ?? '';
    // In UTC itself the offset is written as nothing.
    const offset = name.replace(/^(GMT|UTC)/, '').replace('\u2212', '-');
    const zone = `UTC${offset === '' ? '+00:00' : offset}`;
    if (zones.at(-1)?.zone !== zone) zones.push({ utc, zone });
  }
  return zones;
}
