import { ATMOSPHERE_BAR, absoluteBar } from "../../../gas/units";
import { classRules, isLack } from "../../record/readField";
import { DOES_NOT_APPLY, PASS, type Rule } from "../../judge/rule";
import { settledReading } from "../../record/settledReading";
import { pressureText } from "../../../words/inSentences";

/** What counts as oxygen, ordered or analysed. */
const OXYGEN_FROM = 0.95;

/** Oxygen in aluminium, to 3000 psi at 70 °F and no further: 49 CFR 173.302(b)(4). */
export const pureOxygenPressure: Rule = {
  id: "O06",
  rank: 34,
  title: "Oxygen above 3000 psi in aluminium",
  needs: [
    ["orderedMix", "analysedMix"],
    ["endPressure", "settledPressure"],
  ],
  judge(filled, { rules: country, figures }) {
    const { orderedMix, analysedMix } = filled.fill.fields;
    const isOxygen = [orderedMix, analysedMix].some(
      (reading) => reading.kind === "value" && reading.value.oxygen >= OXYGEN_FROM,
    );
    if (!isOxygen) return DOES_NOT_APPLY;
    const rules = classRules(filled);
    if (isLack(rules)) return rules;
    if (rules.pureOxygenMaxPsi === undefined) return DOES_NOT_APPLY;
    const reading = settledReading(filled.fill, country);
    if (isLack(reading)) return reading;
    const limitBar = absoluteBar(rules.pureOxygenMaxPsi, "us");
    const share = (reading.bar - ATMOSPHERE_BAR) / (limitBar - ATMOSPHERE_BAR);
    if (share <= 1 + 1e-6) return PASS;
    const certain = share > 1 + figures.readingErrorPercent / 100;
    return {
      kind: "fault",
      severity: certain ? "stop" : "warn",
      basis: "law",
      source: rules.pureOxygenSource ?? "",
      message: `Oxygen in aluminium at ${pressureText(reading.bar, reading.written.unit)}: the law ends at ${pressureText(limitBar, reading.written.unit)} at 70 °F.`,
      todo: "Bleed it slowly to the limit, away from oil and people.",
      at: reading.at,
    };
  },
};
