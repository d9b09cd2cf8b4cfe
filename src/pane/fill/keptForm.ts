import { z } from "zod";
import { newForm, STAGES, type FillForm } from "../../counter/form";
import type { Units } from "../../gas/units";

/** The document in the workbook under which the work of the area is kept. */
export const FORM_KEY = "brimbook.fill";

const units = z.enum(["us", "metric"]);
const fillForm = z.object({
  units,
  stage: z.enum(STAGES).catch("receive"),
  several: z.boolean().catch(false),
  written: z.partialRecord(z.string(), z.object({ text: z.string(), units })).catch({}),
  cylinder: z.string().optional().catch(undefined),
  way: z.string().optional().catch(undefined),
  ticked: z.array(z.string()).catch([]),
  entered: z
    .array(
      z.object({
        serial: z.string(),
        owner: z.string(),
        size: z.string(),
        servicePressure: z.string(),
        hydro: z.string(),
        visual: z.string(),
        cleaned: z.string(),
        rating: z.string(),
      }),
    )
    .catch([]),
});

/** What was kept, or a fresh form where nothing usable was. */
export function keptForm(stored: unknown, unitsOfNow: Units): FillForm {
  const parsed = fillForm.safeParse(stored);
  return parsed.success ? parsed.data : newForm(unitsOfNow);
}
