/** Texts and quoted sheet names: what stands in them is no code. */
const QUOTED = /("(?:[^"]|"")*"|'(?:[^']|'')*')/;
/** Likewise, and the names of table columns in brackets. */
const QUOTED_OR_BRACKETED = /("(?:[^"]|"")*"|'(?:[^']|'')*'|\[(?:[^[\]]|\[[^\]]*\])*\])/;

/**
 * A formula as people type it, from the form in which Excel stores it. Functions newer than the file format carry
 * a prefix, and so do those of add-ins (`_xldudf_BRIM_MOD`), which may also name the add-in's file (`[1]!`).
 */
export function typedFormula(stored: string): string {
  if (!/_xl|\]!|'!BRIM/i.test(stored)) return stored;
  return mapCode(stored.replace(/'[^'"]*'!(?=_xldudf_BRIM_|BRIM\.)/gi, ""), QUOTED, (code) =>
    code
      .replace(/(?:\[\d+\]!)?_xldudf_BRIM_([A-Za-z0-9]+)/gi, "BRIM.$1")
      .replace(/\[\d+\]!(?=BRIM\.)/gi, "")
      .replace(/_xl(?:fn|ws|pm|udf)\./gi, ""),
  );
}

/** The same the other way round. */
export function storedFormula(typed: string): string {
  const parameters = lambdaParameters(typed);
  return mapCode(typed, QUOTED_OR_BRACKETED, (code) =>
    code
      .replace(NAME, (name) => (parameters.has(name.toUpperCase()) ? `_xlpm.${name}` : name))
      .replace(CALL, (name) => storedName(name.toUpperCase()) ?? name),
  );
}

/** Whether Excel keeps it as an array formula: ours, and those whose answer may fill more than one cell. */
export function isDynamic(typed: string): boolean {
  let dynamic = false;
  mapCode(typed, QUOTED_OR_BRACKETED, (code) => {
    for (const [name] of code.matchAll(CALL)) {
      dynamic ||= name.toUpperCase().startsWith("BRIM.") || SPILLING.has(name.toUpperCase());
    }
    return code;
  });
  return dynamic;
}

/** A formula as it reads when copied so many rows down and columns right: references without `$` move along. */
export function movedFormula(formula: string, rows: number, columns: number): string {
  const row = (fixed: string, number: string) =>
    fixed ? `$${number}` : within(Number(number) + rows, 1_048_576, String);
  const column = (fixed: string, letters: string) =>
    fixed ? `$${letters}` : within(columnNumber(letters) + columns, 16_384, letterOf);
  return mapCode(formula, QUOTED_OR_BRACKETED, (code) =>
    code.replace(
      REFERENCE,
      (
        _all,
        f1: string,
        c1: string,
        f2: string,
        r1,
        f3: string,
        c2: string,
        f4: string,
        c3,
        f5,
        r2,
        f6,
        r3,
      ) => {
        const parts = c1
          ? [column(f1, c1) + row(f2, r1)]
          : c2
            ? [column(f3, c2), column(f4, c3)]
            : [row(f5, r2), row(f6, r3)];
        return parts.some((part) => part.includes(OFF_SHEET)) ? "#REF!" : parts.join(":");
      },
    ),
  );
}

/** A cell, whole columns, or whole rows; no part of a longer name, no function, no sheet. */
const REFERENCE =
  /(?<![\w.$\\])(?:(\$?)([A-Za-z]{1,3})(\$?)(\d{1,7})|(\$?)([A-Za-z]{1,3}):(\$?)([A-Za-z]{1,3})|(\$?)(\d{1,7}):(\$?)(\d{1,7}))(?![\w.(!\\])/g;
const NAME = /(?<![\w.$\\])[A-Za-z_\\][\w.\\]*(?![\w.(!\\])/g;
const CALL = /(?<![\w.$\\])[A-Za-z][\w.]*(?=\()/g;
const OFF_SHEET = "?";

function mapCode(formula: string, apart: RegExp, change: (code: string) => string): string {
  return formula
    .split(apart)
    .map((part, index) => (index % 2 === 0 ? change(part) : part))
    .join("");
}

function within(number: number, most: number, name: (number: number) => string): string {
  return number >= 1 && number <= most ? name(number) : OFF_SHEET;
}

function columnNumber(letters: string): number {
  return [...letters.toUpperCase()].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0);
}

function letterOf(number: number): string {
  return number === 0
    ? ""
    : letterOf(Math.floor((number - 1) / 26)) + String.fromCharCode(65 + ((number - 1) % 26));
}

function storedName(name: string): string | undefined {
  if (name.startsWith("BRIM.")) return `_xldudf_BRIM_${name.slice(5)}`;
  if (name === "FILTER" || name === "SORT") return `_xlfn._xlws.${name}`;
  return NEWER.has(name) ? `_xlfn.${name}` : undefined;
}

/** Names that LET and LAMBDA give to values: every argument but those that are values. */
function lambdaParameters(formula: string): ReadonlySet<string> {
  const names = new Set<string>();
  for (const call of formula.matchAll(/(?<![\w.])(LET|LAMBDA)\(/gi)) {
    const found = leadingNames(
      formula,
      call.index + call[0].length,
      call[1]!.toUpperCase() === "LET" ? 2 : 1,
    );
    for (const name of found) names.add(name.toUpperCase());
  }
  return names;
}

/** The names that stand as whole arguments at every `step`-th place, the last argument not counted. */
function leadingNames(formula: string, from: number, step: number): readonly string[] {
  const split = splitArguments(formula, from);
  return split
    .slice(0, -1)
    .filter((argument, index) => index % step === 0 && /^[A-Za-z_][\w.]*$/.test(argument));
}

function splitArguments(formula: string, from: number): readonly string[] {
  const found: string[] = [];
  let depth = 0;
  let quote = "";
  let start = from;
  for (let at = from; at < formula.length; at++) {
    const character = formula[at]!;
    if (quote) quote = character === quote ? "" : quote;
    else if (character === '"' || character === "'") quote = character;
    else if (character === "(" || character === "{") depth++;
    else if ((character === ")" || character === "}") && depth > 0) depth--;
    else if (depth === 0 && (character === "," || character === ")")) {
      found.push(formula.slice(start, at).trim());
      start = at + 1;
      if (character === ")") return found;
    }
  }
  return found;
}

/** Functions whose answer may be an array (Microsoft, "Dynamic array formulas and spilled array behavior"). */
const SPILLING = new Set(
  `BYCOL BYROW CHOOSECOLS CHOOSEROWS DROP EXPAND FILTER HSTACK LAMBDA LET MAKEARRAY MAP RANDARRAY REDUCE SCAN SEQUENCE
   SORT SORTBY TAKE TEXTSPLIT TOCOL TOROW TRIMRANGE UNIQUE VSTACK WRAPCOLS WRAPROWS XLOOKUP`.split(/\s+/),
);

/** Functions that came after the file format and are stored with a prefix (MS-XLSX 2.2.2, future functions). */
const NEWER = new Set([
  ...SPILLING,
  ...`ACOT ACOTH AGGREGATE ARABIC ARRAYTOTEXT BASE BETA.DIST BETA.INV BINOM.DIST BINOM.DIST.RANGE BINOM.INV BITAND
   BITLSHIFT BITOR BITRSHIFT BITXOR CEILING.MATH CEILING.PRECISE CHISQ.DIST CHISQ.DIST.RT CHISQ.INV CHISQ.INV.RT
   CHISQ.TEST COMBINA CONCAT CONFIDENCE.NORM CONFIDENCE.T COT COTH COVARIANCE.P COVARIANCE.S CSC CSCH DAYS DECIMAL
   ERF.PRECISE ERFC.PRECISE EXPON.DIST F.DIST F.DIST.RT F.INV F.INV.RT F.TEST FILTERXML FLOOR.MATH FLOOR.PRECISE
   FORECAST.ETS FORECAST.ETS.CONFINT FORECAST.ETS.SEASONALITY FORECAST.ETS.STAT FORECAST.LINEAR FORMULATEXT GAMMA
   GAMMA.DIST GAMMA.INV GAMMALN.PRECISE GAUSS HYPGEOM.DIST IFNA IFS IMCOSH IMCOT IMCSC IMCSCH IMSEC IMSECH IMSINH
   IMTAN ISFORMULA ISOMITTED ISOWEEKNUM LOGNORM.DIST LOGNORM.INV MAXIFS MINIFS MODE.MULT MODE.SNGL MUNIT
   NEGBINOM.DIST NORM.DIST NORM.INV NORM.S.DIST NORM.S.INV NUMBERVALUE PDURATION PERCENTILE.EXC PERCENTILE.INC
   PERCENTRANK.EXC PERCENTRANK.INC PERMUTATIONA PHI POISSON.DIST QUARTILE.EXC QUARTILE.INC RANK.AVG RANK.EQ RRI SEC
   SECH SHEET SHEETS SKEW.P STDEV.P STDEV.S SWITCH T.DIST T.DIST.2T T.DIST.RT T.INV T.INV.2T T.TEST TEXTAFTER
   TEXTBEFORE TEXTJOIN UNICHAR UNICODE VALUETOTEXT VAR.P VAR.S WEBSERVICE WEIBULL.DIST XMATCH XOR Z.TEST`.split(
    /\s+/,
  ),
]);
