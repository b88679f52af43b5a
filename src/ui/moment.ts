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
