import { read } from "../../record/readField";
import { lacking } from "../../judge/lacks";
import { basisHere } from "../../shop/citation";
import { DOES_NOT_APPLY, PASS, type Rule } from "../../judge/rule";

const SOURCE = "49 CFR 173.301(e)";

/** The shop's own cylinders need nobody's consent. */
const OF_THE_SHOP = /^(?:(?:shop|rentals?|house|own|club|rent|école|school)\b|verleih)/i;

/** Filled by somebody other than the owner, and no consent noted, where the log has a column for it: 49 CFR 173.301(e). */
export const noConsent: Rule = {
  id: "R09",
  rank: 48,
  title: "Owner's consent not noted",
  needs: [["consent"]],
  judge({ fill, cylinder }, { rules }) {
    const { consent, owner } = fill.fields;
    const at = { field: "consent" } as const;
    if (consent.kind === "value") return PASS;
    const { reading } = read(cylinder, "owner");
    const name = owner.kind === "value" ? owner.value : reading.kind === "value" ? reading.value : undefined;
    if (name === undefined || OF_THE_SHOP.test(name)) return DOES_NOT_APPLY;
    if (consent.kind !== "blank") return lacking(consent, at);
    return {
      kind: "fault",
      blank: at,
      severity: "note",
      basis: basisHere(rules, SOURCE),
      source: SOURCE,
      message: "The owner's consent to the fill is not noted.",
      todo: "Ask the owner, and tick it off.",
      at,
    };
  },
};
