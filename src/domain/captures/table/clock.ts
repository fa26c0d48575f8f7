const clock = /^(?:(\d{4})-(\d{1,2})-(\d{1,2})[T ])?(?:(\d{1,3}):)?(\d{1,2}):(\d{1,2})(?:[.,:](\d{1,9}))?(?:Z|[+-]\d\d:?\d\d)?$/;

/** Days from 1970 to a date of the Gregorian calendar (Howard Hinnant's algorithm, recalled). */
function daysTo(year: number, month: number, day: number): number {
  const shifted = month <= 2 ? year - 1 : year;
  const era = Math.floor(shifted / 400);
  const yearOfEra = shifted - era * 400;
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1;
  return era * 146097 + yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear - 719468;
}

/**
 * Seconds of a time in clock form: `12:34:56.789`, `02:05.5` (minutes and seconds), `1:02:03`, with or without an ISO date before it.
 * NaN for anything else, for 60 or more minutes or seconds, and for a month or day there is none of. The zone is left aside: only
 * distances in time count.
 */
export function clockSeconds(text: string): number {
  const match = clock.exec(text.trim());
  if (match === null) return Number.NaN;
  const [, year, month = '1', day = '1', hours = '0', minutes = '0', seconds = '0', fraction = ''] = match;
  const [m, s] = [Number(minutes), Number(seconds)];
  if (m >= 60 || s >= 60 || Number(month) > 12 || Number(day) > 31) return Number.NaN;
  const days = year === undefined ? 0 : daysTo(Number(year), Number(month), Number(day));
  return days * 86400 + Number(hours) * 3600 + m * 60 + s + (fraction === '' ? 0 : Number(fraction) / 10 ** fraction.length);
}
