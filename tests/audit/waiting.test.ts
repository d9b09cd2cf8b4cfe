import { Temporal } from "temporal-polyfill";
import { describe, expect, it } from "vitest";
import { receive } from "../../src/counter/receive/receipt";
import { shopFor } from "../../src/audit/shop/shopFor";
import { waitingIn } from "../../src/counter/receive/waitingRows";
import { countryRules } from "../../src/cylinders/countryRules";
import { logOf, onDay, sheetOf, type TestRow } from "./sheets";
import { readLog } from "../../src/log/readLog";

const { shop } = shopFor(countryRules("US"), { asOf: "2026-10-31" });

const REGISTER: readonly TestRow[] = [
  { Serial: "GP1001", "Shop number": "C-014", Size: "AL80", Hydro: onDay("2024-03-14") },
  { Serial: "GP1002", "Shop number": "C-015", Size: "LP85", Hydro: onDay("2024-03-14") },
  { Serial: "GP1003", "Shop number": "C-016", Size: null, Hydro: onDay("2024-03-14") },
];
const WAITING: TestRow = {
  Date: onDay("2026-10-31"),
  Serial: "GP1001",
  "Shop number": null,
  "Start psi": 500,
  "Start mix": "EAN32",
  "Ordered mix": "EAN32",
  "End psi": null,
  "Analysed O2": null,
};

/** Row 1 is the first below the headings. */
const waiting = (fills: readonly TestRow[], rows: readonly number[], sheet = "Fills") =>
  waitingIn(logOf(fills, REGISTER), shop, sheet, rows);

describe("rows of cylinders that wait", () => {
  it("bring serial, what is left in and its mix, and the size from the register", () => {
    const { cylinders, notTaken } = waiting(
      [WAITING, { ...WAITING, Serial: "GP1002", "Start psi": 300 }],
      [1, 2],
    );
    expect(notTaken).toEqual([]);
    expect(cylinders).toMatchObject([
      { serial: "GP1001", row: 1, size: { name: "AL80" }, left: { value: 500, unit: "psi" }, lacks: [] },
      { serial: "GP1002", row: 2, size: { name: "LP85" }, left: { value: 300, unit: "psi" }, lacks: [] },
    ]);
    expect(cylinders[0]!.mix!.oxygen).toBeCloseTo(0.32, 9);
    expect(cylinders[0]!.ordered!.oxygen).toBeCloseTo(0.32, 9);
  });

  it("are found by shop number where that is all that stands there", () => {
    const { cylinders } = waiting([{ ...WAITING, Serial: null, "Shop number": "C-015" }], [1]);
    expect(cylinders).toMatchObject([{ serial: "GP1002", size: { name: "LP85" } }]);
  });

  it("leave open what is blank or in doubt, and say so", () => {
    const { cylinders } = waiting(
      [
        { ...WAITING, "Start mix": null },
        { ...WAITING, Serial: "GP1003" },
        { ...WAITING, "Start psi": "low" },
      ],
      [1, 2, 3],
    );
    expect(
      cylinders.map(({ mix, size, left }) => [mix === undefined, size === undefined, left === undefined]),
    ).toEqual([
      [true, false, false],
      [false, true, false],
      [false, false, true],
    ]);
    expect(cylinders[0]!.lacks).toEqual(["start mix is blank"]);
    expect(cylinders[1]!.lacks).toEqual(["size is blank"]);
    expect(cylinders[2]!.lacks.join()).toMatch(/start pressure: .*low/);
  });

  it("of a fill that was made do not tell what is left in it now", () => {
    for (const made of [{ "End psi": 3000 }, { "Analysed O2": 31.8 }] as readonly TestRow[]) {
      const { cylinders } = waiting([{ ...WAITING, ...made }], [1]);
      expect(cylinders).toMatchObject([
        { serial: "GP1001", size: { name: "AL80" }, left: undefined, mix: undefined },
      ]);
      expect(cylinders[0]!.lacks.join()).toMatch(
        /^filled on 31 October 2026, as its .* says: what is left in it now is not known$/,
      );
    }
  });

  it("of a twin set named by both serials are two cylinders of half the set's water", () => {
    const flat = [{ ...WAITING, Serial: "GP2001 / GP2002", Size: "2x12", Hydro: onDay("2024-03-14") }];
    const log = readLog([sheetOf("Fills", flat)], {
      units: "us",
      dateOrder: "month first",
      stampOrder: "month first",
    });
    const { cylinders } = waitingIn(log, shop, "Fills", [1]);
    expect(cylinders.map(({ serial, size }) => [serial, size?.waterVolumeL])).toEqual([
      ["GP2001", 12],
      ["GP2002", 12],
    ]);
  });

  it("of the register bring the cylinder, and say that what is in it is not known", () => {
    const { cylinders } = waiting([WAITING], [2], "Cylinders");
    expect(cylinders).toMatchObject([{ serial: "GP1002", size: { name: "LP85" }, left: undefined }]);
    expect(cylinders[0]!.lacks).toEqual(["the register does not say what is left in it"]);
  });

  it("that are none are named, each with its reason; every row comes back", () => {
    const rows = [0, 1, 2, 3, 99];
    const { cylinders, notTaken } = waiting([WAITING, { ...WAITING, Serial: null }, {}], rows);
    expect(cylinders.map(({ row }) => row)).toEqual([1]);
    expect(notTaken).toEqual([
      { row: 0, why: "A heading." },
      { row: 2, why: "Serial is blank." },
      { row: 3, why: "A blank row." },
      { row: 99, why: "A blank row." },
    ]);
  });

  it("that cannot be read say why, each its own reason", () => {
    const { notTaken } = waiting(
      [
        WAITING,
        { ...WAITING, Date: null, Serial: null, "Start psi": "?!", "Start mix": null, "Ordered mix": null },
        { Serial: "???" },
      ],
      [2, 3],
    );
    expect(notTaken.map(({ row }) => row)).toEqual([2, 3]);
    for (const { why } of notTaken) expect(why).toMatch(/^[A-Z“"].+\.$/);
    expect(notTaken[0]!.why).not.toBe(notTaken[1]!.why);
    const nameless = { Serial: null, Size: "AL80", Hydro: onDay("2024-03-14") };
    const register = [...REGISTER, nameless, { ...nameless, "Shop number": "C-017" }];
    const of = waitingIn(logOf([WAITING], register), shop, "Cylinders", [4, 5]);
    expect(of.notTaken.map(({ row }) => row)).toEqual([4]);
    expect(of.cylinders.map(({ serial }) => serial)).toEqual(["C-017"]);
  });

  it("of a serial that stands for two cylinders take neither's size", () => {
    const register = [
      { ...REGISTER[0], Made: "2014/03" },
      { ...REGISTER[0], Made: "2003/07" },
    ];
    const { cylinders } = waitingIn(logOf([WAITING], register), shop, "Fills", [1]);
    expect(cylinders).toMatchObject([
      { serial: "GP1001", size: undefined, lacks: ["its serial stands for two cylinders"] },
    ]);
  });

  it("of a sheet that is no part of the log are not taken, and the sheet says why", () => {
    const prices = sheetOf("Prices", [{ What: "Oxygen", "We pay": 40, Per: "bottle" }]);
    const log = readLog([sheetOf("Fills", [WAITING]), prices], { units: "us" });
    for (const sheet of ["Prices", "Gone"]) {
      const { cylinders, notTaken } = waitingIn(log, shop, sheet, [1]);
      expect(cylinders).toEqual([]);
      expect(notTaken[0]!.why).toMatch(/\.$/);
    }
  });
});

it("what was last put in is in doubt where its row has neither end pressure nor analysis", () => {
  const today = Temporal.PlainDate.from("2026-10-31");
  const inside = (fill: TestRow) => receive(logOf([fill], REGISTER), shop, "GP1001", today).inside;
  expect(inside(WAITING)!.doubt).toMatch(/may not have been made/);
  expect(inside({ ...WAITING, Date: onDay("2026-10-02"), "End psi": 3000 })!.doubt).toBeUndefined();
});
