const MS_PER_DAY = 86_400_000;
/** 30 December 1899: serials from 1 March 1900 on count from it. */
const DAYS_TO_1970 = 25_569;
const DAYS_BETWEEN_SYSTEMS = 1462;

/** The serial of a date or time in ISO form, in no time zone; undefined where it is none. */
export function isoSerial(text: string, dateSystem: 1900 | 1904 = 1900): number | undefined {
  const match = /^(?:(\d{4})-(\d\d)-(\d\d))?(?:(?:T|^)(\d\d):(\d\d)(?::(\d\d(?:\.\d+)?))?)?Z?$/.exec(text);
  if (!match || text === "") return undefined;
  const [, year, month, day, hours = "0", minutes = "0", seconds = "0"] = match;
  const time = (Number(hours) * 3600 + Number(minutes) * 60 + Number(seconds)) / 86_400;
  if (year === undefined) return time;
  const days = Date.UTC(Number(year), Number(month) - 1, Number(day)) / MS_PER_DAY + DAYS_TO_1970;
  return days - (dateSystem === 1904 ? DAYS_BETWEEN_SYSTEMS : 0) + time;
}
