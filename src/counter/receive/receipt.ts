import { read } from "../../audit/record/readField";
import type { Temporal } from "temporal-polyfill";
import { dateOf, dayNumber } from "../../cylinders/calendar";
import type { CylinderSize } from "../../cylinders/size";
import { pressureLimitBar } from "../../cylinders/pressureLimit";
import { stampText } from "../../cylinders/testStamp";
import { AIR, type Mixture } from "../../gas/mixture";
import { nameMix } from "../../gas/nameMix";
import { Refusal } from "../../gas/refusal";
import type { Fill, FillMethod, Log } from "../../log/log";
import { value } from "../../log/reading";
import { blankReadings, readingsWith, Records } from "../../log/rows/records";
import { cylindersOf, joinRegister } from "../../log/register";
import type { CellAddress } from "../../sheet/sheet";
import { allAtOnce } from "../../sheet/steps";
import { airNotJudged, dangersInside, lastMade, type First } from "./gasInside";
import { LogColumns } from "../../audit/judge/logColumns";
import { exceeds, richestFor } from "../../audit/record/oxygen";
import type { FilledCylinder, Rule, Verdict } from "../../audit/judge/rule";
import { aboveRating } from "../../audit/rules/oxygen/aboveRating";
import { cleaningPastDue } from "../../audit/rules/oxygen/cleaningPastDue";
import { crackProneAlloy } from "../../audit/rules/vessel/crackProneAlloy";
import { hydroPastDue } from "../../audit/rules/vessel/hydroPastDue";
import { longUnused } from "../../audit/rules/records/longUnused";
import { notAuthorised, notForWater } from "../../audit/rules/vessel/notForThisUse";
import { notOxygenClean } from "../../audit/rules/oxygen/notOxygenClean";
import { damagedUntested, outOfService } from "../../audit/rules/vessel/outOfService";
import { pastServiceLife } from "../../audit/rules/vessel/pastServiceLife";
import { threadsDiffer } from "../../audit/rules/vessel/threadsDiffer";
import { visualPastDue } from "../../audit/rules/vessel/visualPastDue";
import type { Shop } from "../../audit/shop/shop";
import type { TestHistory } from "../../audit/record/testHistory";
import { madeBy } from "./waitingRows";
import { walk } from "../../audit/walk/walk";
import { sourceFor } from "../../audit/shop/citation";
import { dateText, ratingText } from "../../words/inSentences";

/** Whether something may be done to a cylinder. Unknown is never a pass. */
export type MayBe = "yes" | "no" | "not known";

/** Why a cylinder may not be filled. */
export interface RefusalReason {
  readonly says: string;
  readonly todo: string;
  /** Who says so. */
  readonly source: string;
}

/** Whether one kind of fill may be put into the cylinder, and why not. */
export interface MethodVerdict {
  readonly may: MayBe;
  readonly why: string;
}

/** What the log says was last put into the cylinder. What is in it now is for the analyser to say. */
export interface LastFillInside {
  readonly mix: Mixture | undefined;
  readonly mixBy: "analysis" | "mass balance" | "order" | undefined;
  /** Bar absolute, when it left the shop. */
  readonly pressureBar: number | undefined;
  /** ISO date. */
  readonly date: string | undefined;
  readonly doubt: string | undefined;
}

/** What the shop's records say of a cylinder on the counter. Plain values: it travels from a worker. */
export interface Receipt {
  readonly asked: string;
  readonly found: "serial" | "shop number" | "own row" | "nothing";
  readonly serial: string;
  readonly shopNumber: string | undefined;
  readonly owner: string | undefined;
  readonly size: CylinderSize | undefined;
  readonly note: string | undefined;
  /** A serial of the register that the one asked for may be a slip of. */
  readonly suggestion: string | undefined;
  /** Where the cylinder stands in the register. */
  readonly at: CellAddress | undefined;
  /** What is known of the vessel comes before what is in it. */
  readonly verdict: "fill" | "do not fill" | "not known" | "empty it first" | "analyse it first";
  readonly reasons: readonly RefusalReason[];
  /** What is wrong with the gas that is in it, as on the recall list; and what is to be done about it first. */
  readonly wrongInside: readonly RefusalReason[];
  readonly first: First | undefined;
  readonly unknowns: readonly string[];
  readonly good: readonly string[];
  readonly remarks: readonly string[];
  readonly air: MethodVerdict;
  /** Pure oxygen into it, as partial-pressure blending does. */
  readonly pureOxygen: MethodVerdict;
  /** The richest mix it may hold, as a mole fraction; undefined where its rating is not known. */
  readonly maxOxygen: number | undefined;
  readonly rating: string;
  /** Bar absolute; undefined where no service pressure is known. */
  readonly limit:
    { readonly serviceBar: number; readonly limitBar: number; readonly plus: boolean } | undefined;
  readonly inside: LastFillInside | undefined;
}

/** What keeps a cylinder from being filled at all, whatever goes into it, in words of the counter. */
const AT_THE_COUNTER: readonly { readonly rule: Rule; readonly says: string; readonly todo: string }[] = [
  {
    rule: outOfService,
    says: "The register has it out of use.",
    todo: "Do not fill it. Where the register is wrong, correct it first.",
  },
  {
    rule: damagedUntested,
    says: "Heat, a fall or dents are noted, and no test since.",
    todo: "Send it for a test.",
  },
  { rule: pastServiceLife, says: "Past its service life.", todo: "Take it out of use." },
  {
    rule: crackProneAlloy,
    says: "Of alloy 6351, or of an alloy that is not proven, without an eddy-current test in date.",
    todo: "Find out the alloy, or have it tested.",
  },
  { rule: notForWater, says: "Of a kind that is not for under water.", todo: "Do not fill it for a dive." },
  { rule: notAuthorised, says: "Of a class that a dive shop may not fill.", todo: "Do not fill it." },
  {
    rule: threadsDiffer,
    says: "The valve's thread is not that of the neck.",
    todo: "Do not put pressure on it; keep it empty until the right valve is in.",
  },
  { rule: longUnused, says: "Not filled for over a year, and nobody looked inside since.", todo: "Look inside." },
]; // prettier-ignore

/**
 * What a log says of a cylinder that is to be filled on this day: by serial, else by shop number. The rules are those of
 * the audit, judged as if it were filled today.
 */
export function receive(log: Log, shop: Shop, asked: string, today: Temporal.PlainDate): Receipt {
  const text = asked.trim();
  const columns = new LogColumns(log);
  const bySerial = intended(log, shop, text, "serial", today);
  const byNumber = isFound(bySerial) ? undefined : intended(log, shop, text, "shopNumber", today);
  const filled = byNumber && isFound(byNumber) ? byNumber : bySerial;
  const found = foundBy(filled, byNumber === filled);
  const record = filled.cylinder.records.at(-1);
  const day = dayNumber(today);
  const judged = judgeAtCounter(filled, day, shop, columns);
  const air = judgeMethod(filled, shop, columns, "air");
  const nowhere = found === "nothing" ? ["no such cylinder in this workbook"] : [];
  const unknowns = [...nowhere, ...judged.unknowns, ...(air.may === "not known" ? [air.why] : [])];
  const service = filled.cylinder.oxygenService.reading;
  const textOf = (field: "shopNumber" | "owner") => {
    const { reading } = read(filled.cylinder, field);
    return reading.kind === "value" ? reading.value : undefined;
  };
  const size = read(filled.cylinder, "size").reading;
  const { before } = filled;
  const dangers = before ? dangersInside(before, shop, columns) : [];
  const first = (["empty it", "analyse it"] as const).find((each) =>
    dangers.some((danger) => danger.first === each),
  );
  return {
    asked: text,
    found,
    serial: filled.serial,
    shopNumber: textOf("shopNumber"),
    owner: textOf("owner"),
    size: size.kind === "value" ? size.value : undefined,
    note: filled.note,
    suggestion: filled.suggestion,
    at: record && columns.cell({ record, field: "serial" }, filled.fill),
    verdict:
      judged.reasons.length > 0
        ? "do not fill"
        : unknowns.length > 0
          ? "not known"
          : first === undefined
            ? "fill"
            : `${first} first`,
    reasons: judged.reasons,
    wrongInside: dangers.map(({ fault, todo }) => ({
      says: fault.message,
      todo,
      source: sourceFor(shop.rules, fault),
    })),
    first,
    unknowns: [...new Set(unknowns)],
    good: goodTests(filled, day),
    remarks: [
      ...judged.remarks,
      ...(dangers.some(({ rule }) => rule === aboveRating) ? [] : tooRichInside(filled, shop)),
      ...airInDoubt(before, shop),
      ...cleaningUndated(filled, columns),
    ],
    air,
    pureOxygen: judgeMethod(filled, shop, columns, "partial pressure"),
    maxOxygen: service.kind === "value" ? richestFor(service.value, shop) : undefined,
    rating: service.kind === "value" ? ratingText(service.value) : "not known",
    limit: limitOf(filled, day),
    inside: insideOf(filled),
  };
}

function isFound({ cylinder }: FilledCylinder): boolean {
  return cylinder.records.length > 0;
}

function foundBy(filled: FilledCylinder, byNumber: boolean): Receipt["found"] {
  if (filled.register === "found") return byNumber && filled.note !== undefined ? "shop number" : "serial";
  return isFound(filled) ? "own row" : "nothing";
}

/** The fill that is to be made, at the end of what the log holds of this cylinder; and the one that was made last. */
interface Intended extends FilledCylinder {
  readonly before: FilledCylinder | undefined;
}

function intended(
  log: Log,
  shop: Shop,
  text: string,
  field: "serial" | "shopNumber",
  today: Temporal.PlainDate,
): Intended {
  const row = {
    ...blankReadings(),
    date: value(today),
    [field]: value(field === "serial" ? [text] : text),
  };
  const bare = new Records(["date", field]).fill({ sheet: "", row: 0 }, row);
  const register = joinRegister(log);
  const serials = new Set(cylindersOf(bare, register).map(({ serial }) => serial));
  serials.delete("");
  const earlier = log.fills.filter((fill) =>
    cylindersOf(fill, register).some(({ serial }) => serials.has(serial)),
  );
  const ownRow = earlier.findLast(({ cylinderInRow }) => cylinderInRow !== undefined)?.cylinderInRow;
  const fill: Fill = ownRow ? { ...bare, cylinderInRow: ownRow } : bare;
  const walked: FilledCylinder[] = [];
  allAtOnce(walk({ ...log, fills: [...earlier, fill] }, shop, ({ filled }) => walked.push(filled)));
  const next = walked.find((filled) => filled.fill === fill)!;
  return { ...next, before: lastMade(walked, next) };
}

interface CounterJudgement {
  readonly reasons: readonly RefusalReason[];
  readonly unknowns: readonly string[];
  readonly remarks: readonly string[];
}

function judgeAtCounter(
  filled: FilledCylinder,
  day: number,
  shop: Shop,
  columns: LogColumns,
): CounterJudgement {
  const reasons: RefusalReason[] = [];
  const unknowns: string[] = [];
  const remarks: string[] = [];
  for (const test of ["hydro", "visual"] as const) {
    const verdict = (test === "hydro" ? hydroPastDue : visualPastDue).judge(filled, shop);
    if (verdict.kind === "not judged") unknowns.push(verdict.detail ?? verdict.why);
    if (verdict.kind !== "fault") continue;
    const says = ranOut(day, test, filled) ?? verdict.message;
    reasons.push({
      says,
      todo: `Send it for a ${test}; fill it no more before.`,
      source: sourceFor(shop.rules, verdict),
    });
  }
  for (const { rule, says, todo } of AT_THE_COUNTER) {
    if (!isAble(rule, columns)) continue;
    const verdict = rule.judge(filled, shop);
    if (verdict.kind === "not judged" && verdict.blank !== true) unknowns.push(verdict.detail ?? verdict.why);
    if (verdict.kind !== "fault") continue;
    if (verdict.severity === "stop" || verdict.severity === "breach")
      reasons.push({ says, todo, source: sourceFor(shop.rules, verdict) });
    else remarks.push(`${says} ${todo}`);
  }
  return { reasons, unknowns, remarks };
}

/** The fields that the intended fill itself tells. */
const TOLD: readonly string[] = ["date", "serial", "shopNumber", "method", "orderedMix"];

/** As the audit has it: a rule is not asked where the log has no column for what it needs. */
function isAble(rule: Rule, columns: LogColumns): boolean {
  return rule.needs.every((fields) => columns.hasAny(fields) || fields.some((field) => TOLD.includes(field)));
}

/** Of what goes in, the rules of oxygen; air stands for any fill that brings no more than its own. */
function judgeMethod(
  filled: FilledCylinder,
  shop: Shop,
  columns: LogColumns,
  method: FillMethod,
): MethodVerdict {
  const fields = readingsWith(filled.fill.fields, { method: value(method), orderedMix: value(AIR) });
  const made: FilledCylinder = { ...filled, fill: { ...filled.fill, fields } };
  const verdicts = [notOxygenClean, aboveRating, cleaningPastDue]
    .filter((rule) => rule !== cleaningPastDue || isAble(rule, columns))
    .map((rule) => rule.judge(made, shop));
  const isStop = (verdict: Verdict) =>
    verdict.kind === "fault" && (verdict.severity === "stop" || verdict.severity === "breach");
  const stop = verdicts.find(isStop);
  if (stop?.kind === "fault") return { may: "no", why: stop.message };
  const lack = verdicts.find(({ kind }) => kind === "not judged");
  if (lack?.kind === "not judged") return { may: "not known", why: lack.detail ?? lack.why };
  return { may: "yes", why: "" };
}

/** Undefined where it is past due for another reason than that its date ran out. */
function ranOut(day: number, test: "hydro" | "visual", filled: FilledCylinder): string | undefined {
  const state = stateOf(day, test, filled);
  if (state?.kind !== "past due") return undefined;
  const { last } = state;
  const name = test === "hydro" ? "Hydro" : "Visual";
  if (last.kind === "manufacture")
    return `${name}: none since it was made in ${stampText(last.stamp)}; the first was due by ${dateText(last.until)}.`;
  return `${name} of ${stampText(last.stamp)} ran out on ${dateText(last.until)}.`;
}

function stateOf(day: number, test: "hydro" | "visual", { cylinder }: FilledCylinder) {
  const history: TestHistory | undefined = test === "hydro" ? cylinder.hydros : cylinder.visuals;
  return history?.stateOn(day);
}

function goodTests(filled: FilledCylinder, day: number): readonly string[] {
  return (["hydro", "visual"] as const).flatMap((test) => {
    const state = stateOf(day, test, filled);
    if (state?.kind !== "in date") return [];
    return [`${test === "hydro" ? "Hydro" : "Visual"} good until ${dateText(state.last.until)}`];
  });
}

function limitOf({ cylinder }: FilledCylinder, day: number): Receipt["limit"] {
  const { reading } = read(cylinder, "servicePressure");
  if (reading.kind !== "value" || cylinder.rules instanceof Refusal) return undefined;
  const state = cylinder.hydros?.stateOn(day);
  const latest = state?.kind === "in date" ? state.last.stamp : undefined;
  const limitBar = pressureLimitBar(reading.value.bar, cylinder.rules, latest);
  return { serviceBar: reading.value.bar, limitBar, plus: limitBar > reading.value.bar };
}

/** What an earlier fill left above the rating is the next one's start. */
function tooRichInside(filled: FilledCylinder, shop: Shop): readonly string[] {
  const { reading } = filled.cylinder.oxygenService;
  const left = filled.past.last?.mix;
  if (reading.kind !== "value" || !left || !exceeds(left.oxygen, richestFor(reading.value, shop))) return [];
  return [
    `It was last filled with ${nameMix(left)}, above its rating (${ratingText(reading.value)}): analyse what is in it, and empty it if that is so.`,
  ];
}

function airInDoubt(before: FilledCylinder | undefined, shop: Shop): readonly string[] {
  const why = before && airNotJudged(before, shop);
  return why === undefined
    ? []
    : [
        `An air test failed, and whether its last fill was of that air is not known: ${why}. In doubt, empty it.`,
      ];
}

/** Where the log has no room for it, nothing says how old the cleaning is of a cylinder that is rated clean. */
function cleaningUndated(filled: FilledCylinder, columns: LogColumns): readonly string[] {
  const { reading } = filled.cylinder.oxygenService;
  if (reading.kind !== "value" || !reading.value.oxygenClean || isAble(cleaningPastDue, columns)) return [];
  return ["The log has no dates of oxygen cleaning: read its sticker before oxygen goes in."];
}

const PERHAPS_NOT_MADE = "the row has neither end pressure nor analysis, so that fill may not have been made";

function insideOf({ past }: FilledCylinder): LastFillInside | undefined {
  const { last } = past;
  if (!last) return undefined;
  return {
    mix: last.mix,
    mixBy: last.mixBy,
    pressureBar: last.pressureBar,
    date: last.day === undefined ? undefined : dateOf(last.day).toString(),
    doubt: madeBy(last.fill.fields) === undefined ? PERHAPS_NOT_MADE : past.orderOnTrust,
  };
}
