import { read } from "../../record/readField";
import { DOES_NOT_APPLY, PASS, type Rule } from "../../judge/rule";

/** Rated oxygen clean, and no date shows when it was cleaned: Tukes. Told once, in the register. */
export const cleaningNotShown: Rule = {
  id: "O11",
  rank: 36,
  title: "Oxygen clean without a date",
  needs: [["oxygenCleaned"], ["oxygenService"]],
  judge({ cylinder }) {
    const { reading } = cylinder.oxygenService;
    if (reading.kind !== "value" || !reading.value.oxygenClean) return DOES_NOT_APPLY;
    const { tests, doubts } = cylinder.cleanings;
    if (tests.length + doubts.length > 0) return PASS;
    const { at } = read(cylinder, "oxygenCleaned");
    return {
      kind: "fault",
      blank: at,
      severity: "warn",
      basis: "practice",
      source: "Tukes, blending page",
      message: "It is rated oxygen clean, and no date says when it was cleaned.",
      todo: "Read the date from its sticker and write it here; without one, clean it again.",
      at,
    };
  },
};
