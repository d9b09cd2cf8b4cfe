import { Temporal } from "temporal-polyfill";
import { describe, expect, it } from "vitest";
import {
  civilOf,
  epochDayOf,
  epochDayOfSerial,
  plainDateOf,
  serialOfEpochDay,
  timeOfSerial,
} from "../../src/sheet/serialDate";

/** Serials that spreadsheets show for these days; the 1900 system's phantom leap day is Excel's own (ECMA-376 part 1, 18.17.4.1). */
const SERIALS = [
  [1, "1900-01-01"],
  [59, "1900-02-28"],
  [61, "1900-03-01"],
  [18537, "1950-10-01"],
  [24077, "1965-12-01"],
  [43739, "2019-10-01"],
  [45351, "2024-02-29"],
  [2958465, "9999-12-31"],
] as const;

describe("the day a serial stands for", () => {
  it.each(SERIALS)("%i is %s in the 1900 system", (serial, date) => {
    const day = epochDayOfSerial(serial, 1900)!;
    expect(plainDateOf(day).toString()).toBe(date);
    expect(serialOfEpochDay(day, 1900)).toBe(serial);
  });

  it("lies 1462 days earlier in the 1904 system", () => {
    expect(plainDateOf(epochDayOfSerial(42277, 1904)!).toString()).toBe("2019-10-01");
    expect(plainDateOf(epochDayOfSerial(0, 1904)!).toString()).toBe("1904-01-01");
    expect(serialOfEpochDay(epochDayOfSerial(42277, 1904)!, 1904)).toBe(42277);
  });

  it("does not exist for 0, below it, for the 29 February 1900, beyond 9999 and for what is no number", () => {
    for (const serial of [0, -1, 60, 2958466, NaN, Infinity])
      expect(epochDayOfSerial(serial, 1900)).toBeUndefined();
  });

  it("is the same with a time of day, which is kept to the minute", () => {
    expect(epochDayOfSerial(43739.999, 1900)).toBe(epochDayOfSerial(43739, 1900));
    expect(timeOfSerial(43739.5)!.toString()).toBe("12:00:00");
    expect(timeOfSerial(0.604166667)!.toString()).toBe("14:30:00");
    for (const serial of [43739, NaN, Infinity, -Infinity]) expect(timeOfSerial(serial)).toBeUndefined();
  });
});

describe("days as numbers", () => {
  it("agree with the calendar of another implementation, day by day over 200 years", () => {
    let date = Temporal.PlainDate.from("1899-12-25");
    for (let day = epochDayOf(1899, 12, 25)!; day < epochDayOf(2100, 1, 5)!; day++) {
      const { year, month, day: dayOfMonth } = date;
      expect(civilOf(day)).toEqual({ year, month, day: dayOfMonth });
      expect(epochDayOf(year, month, dayOfMonth)).toBe(day);
      date = date.add({ days: 1 });
    }
  });

  it("refuse days that no calendar has", () => {
    const impossible = [
      [2023, 2, 29],
      [1900, 2, 29],
      [2024, 13, 1],
      [2024, 0, 1],
      [2024, 4, 31],
      [2024, 1, 0],
    ] as const;
    for (const [year, month, day] of impossible) expect(epochDayOf(year, month, day)).toBeUndefined();
    expect(epochDayOf(2000, 2, 29)).toBeDefined();
  });
});
