import type { Rule } from "./rule";
import { aboveRating } from "./rules/aboveRating";
import { airNotAir } from "./rules/airNotAir";
import { airOnResidue } from "./rules/airOnResidue";
import { airTestDue } from "./rules/airTestDue";
import { beyondCertification, noCertification } from "./rules/certification";
import { cleaningNotShown } from "./rules/cleaningNotShown";
import { cleaningPastDue } from "./rules/cleaningPastDue";
import { cleanLost } from "./rules/cleanLost";
import { continuousTooRich } from "./rules/continuousTooRich";
import { crackProneAlloy } from "./rules/crackProneAlloy";
import { endNotAboveStart } from "./rules/endNotAboveStart";
import { externalVisualOnly } from "./rules/externalVisualOnly";
import { fillerNotNamed } from "./rules/fillerNotNamed";
import { filledElsewhere } from "./rules/filledElsewhere";
import { filledTwice } from "./rules/filledTwice";
import { heliumNotAnalysed } from "./rules/heliumNotAnalysed";
import { hydroPastDue } from "./rules/hydroPastDue";
import { hydroSinceCleaning } from "./rules/hydroSinceCleaning";
import { impossibleTest } from "./rules/impossibleTest";
import { labelIncomplete } from "./rules/labelIncomplete";
import { longUnused } from "./rules/longUnused";
import { lowStart } from "./rules/lowStart";
import { missedVisual } from "./rules/missedVisual";
import { modTooDeep } from "./rules/modTooDeep";
import { nitroxUnrated } from "./rules/nitroxUnrated";
import { noConsent } from "./rules/noConsent";
import { notAnalysed } from "./rules/notAnalysed";
import { notAsOrdered } from "./rules/notAsOrdered";
import { notAuthorised, notForWater } from "./rules/notForThisUse";
import { notInRegister } from "./rules/notInRegister";
import { notLookedOver } from "./rules/notLookedOver";
import { noTestDate } from "./rules/noTestDate";
import { notOxygenClean } from "./rules/notOxygenClean";
import { notSigned } from "./rules/notSigned";
import { damagedUntested, outOfService } from "./rules/outOfService";
import { outsideBalance } from "./rules/outsideBalance";
import { overPressure, plusNotAllowed } from "./rules/overPressure";
import { pastServiceLife } from "./rules/pastServiceLife";
import { permitLimit } from "./rules/permitLimit";
import { plannedTooDeep } from "./rules/plannedTooDeep";
import { pureOxygenPressure } from "./rules/pureOxygenPressure";
import { sourceNotProven } from "./rules/sourceNotProven";
import { stampOrder } from "./rules/stampOrder";
import { starMark } from "./rules/starMark";
import { suspectAir } from "./rules/suspectAir";
import { swallowedStamp } from "./rules/swallowedStamp";
import { threadsDiffer } from "./rules/threadsDiffer";
import { visualPastDue } from "./rules/visualPastDue";
import { wrongUnit } from "./rules/wrongUnit";

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
