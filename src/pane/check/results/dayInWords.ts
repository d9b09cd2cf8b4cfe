const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"] as const;

/** `12 Oct 2026` from an ISO date: no reader can take the day for the month. Anything else stays as it is. */
export function dayInWords(isoDate: string): string {
  const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(isoDate) ?? [];
  const name = MONTHS[Number(month) - 1];
  return name === undefined ? isoDate : `${Number(day)} ${name} ${year}`;
}

/** `Oct 2026` from `2026-10`. */
export function monthInWords(isoMonth: string): string {
  const [, year, month] = /^(\d{4})-(\d{2})$/.exec(isoMonth) ?? [];
  const name = MONTHS[Number(month) - 1];
  return name === undefined ? isoMonth : `${name} ${year}`;
}
