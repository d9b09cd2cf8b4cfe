import {
  createDarkTheme,
  createLightTheme,
  type BrandVariants,
  type Theme,
} from "@fluentui/react-components";

/** Each page names its faces: in Excel the host's own come first, elsewhere the one that we ship. */
const TYPEFACE = "var(--brimTypeface)";

/** Petrol blue, from night water to surface glare. */
const PETROL: BrandVariants = {
  10: "#02090c",
  20: "#071d25",
  30: "#082f3c",
  40: "#083d4e",
  50: "#0a4b5f",
  60: "#0d5a71",
  70: "#126983",
  80: "#1a7894",
  90: "#3287a2",
  100: "#4a97b0",
  110: "#62a6bd",
  120: "#7bb6ca",
  130: "#94c5d6",
  140: "#aed5e2",
  150: "#c8e4ed",
  160: "#e3f3f8",
};

/** Sand-grey surfaces: warm enough not to glare beside a white grid. */
const SAND_LIGHT = {
  colorNeutralBackground1: "#ffffff",
  colorNeutralBackground1Hover: "#f6f3ee",
  colorNeutralBackground1Pressed: "#e9e4db",
  colorNeutralBackground2: "#faf8f4",
  colorNeutralBackground3: "#f4f1eb",
  colorNeutralBackground4: "#efebe4",
  colorNeutralStroke1: "#cfc8bc",
  colorNeutralStroke2: "#ded8cd",
  colorNeutralStroke3: "#eae5dc",
  colorNeutralForeground1: "#22262a",
  colorNeutralForeground2: "#3d4247",
  colorNeutralForeground3: "#5a5f63",
} satisfies Partial<Theme>;

const SAND_DARK = {
  colorNeutralBackground1: "#25282a",
  colorNeutralBackground1Hover: "#303335",
  colorNeutralBackground1Pressed: "#1b1e1f",
  colorNeutralBackground2: "#1e2022",
  colorNeutralBackground3: "#191b1c",
  colorNeutralBackground4: "#141617",
  colorNeutralStroke1: "#5d5f5c",
  colorNeutralStroke2: "#464846",
  colorNeutralStroke3: "#383a39",
  colorNeutralForeground1: "#f4f1ec",
  colorNeutralForeground2: "#d9d5ce",
  colorNeutralForeground3: "#b3afa8",
} satisfies Partial<Theme>;

export type Appearance = "light" | "dark";

/** Colours of the severities: they only repeat the word and the shape. Each is 4.5:1 on every surface above. */
const SEVERITIES_LIGHT = {
  brimStop: "#a3172b",
  brimBreach: "#9a4204",
  brimWarn: "#6f5a00",
  brimNote: "#0d5a71",
  brimNotChecked: "#55595d",
};

const SEVERITIES_DARK = {
  brimStop: "#ff9d9d",
  brimBreach: "#ffb078",
  brimWarn: "#e6cf6a",
  brimNote: "#7bb6ca",
  brimNotChecked: "#c3bfb8",
};

type PaneTheme = Theme & typeof SEVERITIES_LIGHT;

/** The severity colours as style values. */
export const SEVERITY_COLOURS = {
  stop: "var(--brimStop)",
  breach: "var(--brimBreach)",
  warn: "var(--brimWarn)",
  note: "var(--brimNote)",
  "not checked": "var(--brimNotChecked)",
  accepted: "var(--brimNotChecked)",
} as const;

export const THEMES: Readonly<Record<Appearance, PaneTheme>> = {
  light: {
    ...createLightTheme(PETROL),
    ...SAND_LIGHT,
    ...SEVERITIES_LIGHT,
    fontFamilyBase: TYPEFACE,
    colorBrandForeground1: PETROL[70],
    colorBrandForegroundLink: PETROL[60],
  },
  dark: {
    ...SEVERITIES_DARK,
    ...createDarkTheme(PETROL),
    ...SAND_DARK,
    fontFamilyBase: TYPEFACE,
    colorBrandForeground1: PETROL[120],
    colorBrandForeground2: PETROL[130],
    colorBrandForegroundLink: PETROL[130],
    colorBrandForegroundLinkHover: PETROL[140],
    colorCompoundBrandForeground1: PETROL[120],
  },
};
