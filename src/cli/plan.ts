import { z } from "zod";
import { FIELD_NAMES, newForm, writeField, type FieldName, type FillForm } from "../counter/form";
import { fillModel, type FillModel } from "../counter/plan/model";
import { planSaid, stepsSaid, stopsHold, waySaid } from "../counter/plan/planSaid";
import { CAUTIONS } from "../counter/words";
import { countryRules } from "../cylinders/countryRules";
import { readUnits, UNIT_NAMES, type Units } from "../gas/units";
import { unitsOf } from "../reports/month/options";
import { EXIT, type Command, type ExitCode, type Given, type Terminal } from "./command";
import { readLogFile, rulesOf } from "./logFile";
import { LOG_OPTIONS } from "./logOptions";
import { CommandProblem } from "./problem";
import { receiptFor } from "./receive";

const EXAMPLE = `plan '{"startPressure":500,"startMix":"air","endPressure":3000,"endMix":32}' --rules US`;

/** The ways to a wanted fill, as the counter ranks them. */
export const plan: Command = {
  name: "plan",
  usage: `plan '{"startPressure":500,"startMix":"air","endPressure":3000,"endMix":32}' [LOG] --rules US [--units us] [--json]`,
  says:
    `Plans a fill. The JSON object holds fields of the counter: ${FIELD_NAMES.slice(1, 6).join(", ")}, topMix, bankMix, ` +
    "bankPressure, oxygenBank, continuousMost and so on; asked names a cylinder of the log. Exit code 0: the first way " +
    "may be gone; 3: not known whether; 1: none may; 2: cannot be read.",
  options: { ...LOG_OPTIONS, json: { type: "boolean" } },

  async run(given, terminal) {
    const [written, ...files] = given.words;
    if (written === undefined) throw new CommandProblem(`Say what is wanted: ${EXAMPLE}.`);
    const fields = readFields(written);
    const { model, units } = await modelOf(fields, files, given, terminal);
    for (const [name, problem] of Object.entries(model.problems))
      throw new CommandProblem(`${name}: ${problem}`);
    if (!model.wanted)
      throw new CommandProblem(
        "Nothing to plan: give startPressure, startMix, endPressure and endMix (startMix may be left out of an empty cylinder).",
      );
    if (given.has("json")) terminal.print(JSON.stringify(asJson(model, units), null, 2));
    else for (const line of planLines(model, units)) terminal.print(line);
    return exitCode(model);
  },
};

async function modelOf(
  fields: Fields,
  files: readonly string[],
  given: Given,
  terminal: Terminal,
): Promise<{ readonly model: FillModel; readonly units: Units }> {
  const written = given.value("units");
  const givenUnits = written === undefined ? undefined : readUnits(written);
  if (files.length === 0) {
    if (fields.asked !== undefined)
      throw new CommandProblem("asked names a cylinder: give the file of its log after the JSON.");
    const rules = countryRules(given.value("rules") ?? "");
    const units = givenUnits ?? unitsOf(rules);
    return { model: fillModel(formOf(fields, units), undefined, rules.country), units };
  }
  const file = await readLogFile({ ...given, words: files }, terminal);
  const rules = rulesOf(file);
  const units = file.units ?? unitsOf(rules);
  const receipt = fields.asked === undefined ? undefined : receiptFor(String(fields.asked), file);
  return { model: fillModel(formOf(fields, units), receipt, rules.country, file.options.house), units };
}

const FIELDS = z.partialRecord(z.enum(FIELD_NAMES), z.union([z.string(), z.number()]));
type Fields = z.infer<typeof FIELDS>;

function readFields(written: string): Fields {
  let given: unknown;
  try {
    given = JSON.parse(written);
  } catch {
    throw new CommandProblem(`${written.slice(0, 60)} is not JSON: write it as ${EXAMPLE}.`);
  }
  const read = FIELDS.safeParse(given);
  if (read.success) return read.data;
  const unknown = Object.keys(given ?? {}).find((name) => !FIELD_NAMES.includes(name as FieldName));
  throw new CommandProblem(
    unknown === undefined
      ? `The fields are a JSON object of texts and numbers: write it as ${EXAMPLE}.`
      : `There is no field "${unknown}": write one of ${FIELD_NAMES.join(", ")}.`,
  );
}

function formOf(fields: Fields, units: Units): FillForm {
  return Object.entries(fields).reduce(
    (form, [name, value]) => writeField(form, name as FieldName, String(value)),
    newForm(units),
  );
}

/** The chosen way is the first that can be planned: the list begins with what may be done. */
function exitCode({ chosen }: FillModel): ExitCode {
  if (!chosen || chosen.may === "no") return EXIT.findings;
  return chosen.may === "yes" ? EXIT.nothingFound : EXIT.notFullyJudged;
}

function asJson(model: FillModel, units: Units): unknown {
  return {
    units,
    ways: model.ways.map((way) => ({
      way: way.title,
      may: way.may,
      why: way.why,
      ...(way.plan &&
        way.order && {
          steps: stepsSaid(way.plan, way.order, units),
          mix: way.plan.result.mix,
          ...(way.cost && { cost: way.cost.total }),
        }),
    })),
    modAt:
      model.depths?.mod === undefined ? null : { depth: model.depths.mod, unit: UNIT_NAMES[units].depth },
    cautions: CAUTIONS,
  };
}

function planLines(model: FillModel, units: Units): readonly string[] {
  const { ways, chosen } = model;
  return [
    ...(chosen?.plan && chosen.order ? chosenLines(model, units) : []),
    "Ways to do it:",
    ...ways.map((way) => `  ${way.title}. ${waySaid(way, units)}`.trimEnd()),
    "",
    CAUTIONS[0],
  ];
}

function chosenLines(model: FillModel, units: Units): readonly string[] {
  const chosen = model.chosen!;
  const said = planSaid(model, chosen, units);
  const unit = UNIT_NAMES[units].pressure;
  const steps = stepsSaid(chosen.plan!, chosen.order!, units, model.heat);
  return [
    chosen.title,
    ...[waySaid(chosen, units)].filter(Boolean),
    ...(steps.length === 0 ? ["The order is in the cylinder already: nothing to add."] : []),
    ...steps.map(
      ({ what, change, stop, warm }) =>
        `  ${what}: ${change}, stop at ${stop} ${unit}${warm === undefined ? "" : `, warm ${warm}`}`,
    ),
    stopsHold(chosen.order!, model.exactness?.errors.gaugeBar ?? 0, units),
    `Mix: ${said.mix}`,
    ...[...(said.mod ? [said.mod] : []), ...said.facts].map(([what, fact]) => `${what}: ${fact}`),
    ...said.notes,
    ...said.warnings,
    ...said.cautions,
    "",
  ];
}
