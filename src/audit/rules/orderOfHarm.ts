import type { Rule } from "../judge/rule";
import { aboveRating } from "./oxygen/aboveRating";
import { airNotAir } from "./analysis/airNotAir";
import { airOnResidue } from "./analysis/airOnResidue";
import { airTestDue } from "./air/airTestDue";
import { beyondCertification, noCertification } from "./analysis/certification";
import { cleaningNotShown } from "./oxygen/cleaningNotShown";
import { cleaningPastDue } from "./oxygen/cleaningPastDue";
import { cleanLost } from "./oxygen/cleanLost";
import { continuousTooRich } from "./oxygen/continuousTooRich";
import { crackProneAlloy } from "./vessel/crackProneAlloy";
import { endNotAboveStart } from "./records/endNotAboveStart";
import { externalVisualOnly } from "./vessel/externalVisualOnly";
import { fillerNotNamed } from "./analysis/fillerNotNamed";
import { filledElsewhere } from "./records/filledElsewhere";
import { filledTwice } from "./records/filledTwice";
import { heliumNotAnalysed } from "./analysis/heliumNotAnalysed";
import { hydroPastDue } from "./vessel/hydroPastDue";
import { hydroSinceCleaning } from "./oxygen/hydroSinceCleaning";
import { impossibleTest } from "./records/impossibleTest";
import { labelIncomplete } from "./analysis/labelIncomplete";
import { longUnused } from "./records/longUnused";
import { lowStart } from "./vessel/lowStart";
import { missedVisual } from "./vessel/missedVisual";
import { modTooDeep } from "./analysis/modTooDeep";
import { nitroxUnrated } from "./oxygen/nitroxUnrated";
import { noConsent } from "./records/noConsent";
import { notAnalysed } from "./analysis/notAnalysed";
import { notAsOrdered } from "./analysis/notAsOrdered";
import { notAuthorised, notForWater } from "./vessel/notForThisUse";
import { notInRegister } from "./records/notInRegister";
import { notLookedOver } from "./vessel/notLookedOver";
import { noTestDate } from "./vessel/noTestDate";
import { notOxygenClean } from "./oxygen/notOxygenClean";
import { notSigned } from "./analysis/notSigned";
import { damagedUntested, outOfService } from "./vessel/outOfService";
import { outsideBalance } from "./analysis/outsideBalance";
import { overPressure, plusNotAllowed } from "./vessel/overPressure";
import { pastServiceLife } from "./vessel/pastServiceLife";
import { permitLimit } from "./oxygen/permitLimit";
import { plannedTooDeep } from "./analysis/plannedTooDeep";
import { pureOxygenPressure } from "./oxygen/pureOxygenPressure";
import { sourceNotProven } from "./air/sourceNotProven";
import { stampOrder } from "./records/stampOrder";
import { starMark } from "./vessel/starMark";
import { suspectAir } from "./air/suspectAir";
import { swallowedStamp } from "./records/swallowedStamp";
import { threadsDiffer } from "./vessel/threadsDiffer";
import { visualPastDue } from "./vessel/visualPastDue";
import { wrongUnit } from "./records/wrongUnit";

/** Every rule of the audit, by the harm it prevents. */
export const RULES: readonly Rule[] = [
  notOxygenClean,
  hydroPastDue,
  outOfService,
  overPressure,
  aboveRating,
  pastServiceLife,
  crackProneAlloy,
  notAnalysed,
  modTooDeep,
  cleanLost,
  sourceNotProven,
  cleaningPastDue,
  notAsOrdered,
  visualPastDue,
  plusNotAllowed,
  damagedUntested,
  airOnResidue,
  nitroxUnrated,
  noTestDate,
  starMark,
  continuousTooRich,
  lowStart,
  notSigned("analysedBy"),
  notSigned("receivedBy"),
  outsideBalance,
  airTestDue,
  suspectAir,
  notInRegister,
  swallowedStamp("hydro"),
  swallowedStamp("visual"),
  externalVisualOnly,
  notForWater,
  notAuthorised,
  threadsDiffer,
  missedVisual,
  notLookedOver,
  pureOxygenPressure,
  permitLimit,
  hydroSinceCleaning,
  cleaningNotShown,
  airNotAir,
  beyondCertification,
  noCertification,
  heliumNotAnalysed,
  labelIncomplete,
  plannedTooDeep,
  fillerNotNamed,
  impossibleTest,
  stampOrder,
  wrongUnit,
  endNotAboveStart,
  filledTwice,
  noConsent,
  longUnused,
  filledElsewhere,
];

/** The three that a log must let us judge for every fill before nothing found means nothing wrong. */
export const DECISIVE: readonly Rule[] = [hydroPastDue, visualPastDue, aboveRating];
