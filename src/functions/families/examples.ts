import type { Argument } from "../../typed/cells";

/** Arguments to show each function with: the first example stands in the formula helper, all of them in the docs. */
export const EXAMPLES: Readonly<Record<string, readonly (readonly Argument[])[]>> = {
  // Mixes
  MIX: [[18, 45], [0.32], [20.95]],
  MIXPART: [
    ["TX 18/45", "nitrogen"],
    ["air", "oxygen"],
  ],
  // Depth
  MOD: [
    ["EAN32", "ft"],
    ["EAN50", "m", 1.6],
    ["TX 18/45", "m", 1.4, "fresh"],
  ],
  MINDEPTH: [
    ["TX 10/50", "m"],
    ["EAN32", "ft"],
  ],
  OXYGENPP: [
    [100, "EAN32", "ft"],
    [40, 28, "m"],
  ],
  BESTMIX: [
    [33, "m"],
    [110, "ft"],
  ],
  EAD: [
    [24, "EAN34", "m"],
    [100, 32, "ft"],
  ],
  END: [
    [60, "TX 18/45", "m"],
    [200, "TX 18/45", "ft", false],
  ],
  GASDENSITY: [
    [30, "air", "m"],
    [60, "TX 18/45", "m"],
  ],
  // Blending
  FILLSTEPS: [
    ["empty", null, 3000, 32, "psi"],
    [50, "EAN32", 232, "TX 18/45", "bar"],
  ],
  ADDGAS: [
    ["oxygen", "empty", null, 3000, 32, "psi"],
    ["helium", "empty", null, 232, "TX 18/45", "bar"],
  ],
  STOPAT: [
    ["oxygen", "empty", null, 3000, 32, "psi"],
    ["oxygen", 500, "EAN32", 3000, "EAN36", "psi"],
  ],
  MIXAFTER: [
    [80, "EAN32", 200, "air", "bar"],
    [800, "TX 18/45", 3000, "EAN32", "psi", "mix"],
  ],
  TOPWITH: [
    [50, "EAN32", 200, "EAN36", "bar"],
    [500, "TX 18/45", 3000, "TX 18/45", "psi", "mix"],
  ],
  DRAINTO: [
    [150, "EAN36", 200, "EAN32", "bar"],
    [100, "EAN32", 230, "EAN40", "bar", "air", 60],
  ],
  MIXOF: [
    [
      [
        ["air", 0],
        ["oxygen", 405],
        ["air", 3000],
      ],
      "psi",
    ],
    [
      [
        ["empty", 0, 20],
        ["oxygen", 30, 35],
        ["air", 200, 20],
      ],
      "bar",
    ],
  ],
  SETTLED: [
    [3300, "air", 120, 70, "psi"],
    [232, "EAN32", 45, 15, "bar"],
  ],
  DECANT: [
    [15, 230, 3, 100, "air", "bar"],
    ["AL80", 3000, "AL13", 0, "EAN32", "psi"],
  ],
  INJECT: [
    ["EAN32", 250],
    [36, 10, 93],
  ],
  ZFACTOR: [
    [232, "air", "bar"],
    [3000, "TX 18/45", "psi", 70],
  ],
  // Cylinders, log, money
  TESTDATE: [["9 A1 32 06"], ["10/19", "month first"], ["06/09"]],
  HYDRODUE: [
    ["2021/10", "US"],
    ["2021/10", "GB"],
  ],
  VISUALDUE: [["2025/10", "US"]],
  FILLCHECK: [
    ["2026-10-31", "2022/10", "2026/03", "O2 clean", 32, "partial pressure", "US"],
    ["2026-10-31", "2021/09", "2026/03", 40, 32, "partial pressure", "US"],
    ["2026-10-31", "2022/10", null, 40, 32, "premix", "US"],
  ],
  FREEGAS: [
    ["AL80", 3000, "air", "psi"],
    [12, 232, "TX 18/45", "bar"],
  ],
  GASUSED: [
    ["oxygen", "AL80", "empty", null, 3000, 32, "psi"],
    ["helium", "D12", "empty", null, 232, "TX 18/45", "bar"],
  ],
  FILLCOST: [
    [
      "AL80",
      "empty",
      null,
      3000,
      32,
      [
        ["oxygen", 0.5],
        ["top", 0.02],
        ["per fill", 4],
      ],
      "psi",
    ],
    [
      "D12",
      50,
      "EAN32",
      232,
      "TX 18/45",
      [
        ["helium", 0.05],
        ["oxygen", 0.01],
        ["top", 0.001],
        ["per fill", 5],
      ],
      "bar",
    ],
  ],
  LABELTEXT: [
    [3000, 31.9, "R.", "2026-10-31", "GP-0417", "psi"],
    [228, "TX 10/52", "T.", "2026-10-31", "GP-0032", "bar"],
  ],
  PRESSURELIMIT: [
    ["3AL3000", 3000, "psi", "US"],
    ["3AA2400", null, "psi", "US", "2022/10+", 120, "EAN32"],
    ["EN 1964-1", 232, "bar", "GB", null, 40],
  ],
  WATERVOLUME: [
    [77.4, 3000, "psi"],
    [2400, 200, "bar"],
  ],
  FILLSLEFT: [
    ["50 L", 4000, "AL80", 500, 2500, "EAN32", "psi"],
    [200, 300, 12, 50, 200, "air", "bar"],
  ],
  // Explanation
  WHY: [
    ["STOPAT", "oxygen", "empty", null, 3000, 32, "psi"],
    ["MOD", 3, "ft"],
  ],
};
