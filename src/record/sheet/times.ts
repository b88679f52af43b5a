/** A moment as it stands on paper: in UTC, and in the time of a place with its offset. */
export interface SheetTime {
  /** "2026-03-12 07:44:56Z" */
  readonly utc: string;
  /** "2026-03-12 08:44:56 +01:00" */
  readonly local: string;
}

/**
 * @param utc RFC 3339
 * @param timeZone an IANA name, such as "Europe/Berlin"
 */
export function sheetTime(utc: string, timeZone: string): SheetTime {
  const moment = new Date(utc);
  return { utc: `${moment.toISOString().slice(0, 19).replace('T', ' ')}Z`, local: localTime(moment, timeZone) };
}

function localTime(moment: Date, timeZone: string): string {
  const parts = formatFor(timeZone).formatToParts(moment);
  const part = (type: Intl.DateTimeFormatPartTypes): string => parts.find((each) => each.type === type)?.value ?? '';
  // In UTC itself the offset is written as nothing.
  const offset = part('timeZoneName').replace(/^GMT$/, '+00:00').replace(/^GMT/, '').replace('\u2212', '-');
  return `${part('year')}-${part('month')}-${part('day')} ${part('hour')}:${part('minute')}:${part('second')} ${offset}`;
}

const formats = new Map<string, Intl.DateTimeFormat>();

/** One for each zone: to make one takes longer than to use it a hundred times. */
function formatFor(timeZone: string): Intl.DateTimeFormat {
  const known = formats.get(timeZone);
  if (known) return known;
  const made = new Intl.DateTimeFormat('en-GB', {
    timeZone,
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
    second: '2-digit',
    hourCycle: 'h23',
    timeZoneName: 'longOffset',
  });
  formats.set(timeZone, made);
  return made;
}
