import { readFileSync } from "node:fs";
import Ajv from "ajv";
import { describe, expect, it } from "vitest";
import { functionsMetadata } from "../../scripts/functions-metadata.mjs";
import { generatedFiles } from "../../scripts/generated-files";
import { WORKSHEET_FUNCTIONS } from "../../src/functions/catalogue";

const HELP_URL = "https://example.org/functions.html";
const metadata = await functionsMetadata(HELP_URL);
const schema = JSON.parse(
  readFileSync(new URL("custom-functions.schema.json", import.meta.url), "utf8"),
) as object;

describe("what Excel is told of the functions", () => {
  it("fits the published schema", () => {
    const validate = new Ajv({ strict: false, unicodeRegExp: true }).compile(schema);
    expect(validate(metadata), JSON.stringify(validate.errors, null, 1)).toBe(true);
  });

  it("fails the schema when it should", () => {
    const validate = new Ajv({ strict: false, unicodeRegExp: true }).compile(schema);
    const [first, ...others] = metadata.functions;
    expect(validate({ ...metadata, functions: [{ ...first, id: "M" }, ...others] })).toBe(false);
    expect(validate({ ...metadata, functions: [{ ...first, helpUrl: "http://example.org" }] })).toBe(false);
  });

  it("names every function and argument as the definitions do, in their order", () => {
    const told = metadata.functions.map(({ id, name, parameters }) => ({
      id,
      name,
      parameters: parameters.map(({ name, optional = false }) => ({ name, optional })),
    }));
    const defined = WORKSHEET_FUNCTIONS.map(({ id, parameters }) => ({
      id,
      name: id,
      parameters: parameters.map(({ name, optional }) => ({ name, optional })),
    }));
    expect(told).toEqual(defined);
  });

  it("takes everything as ranges of anything, so that cells, columns and errors all arrive", () => {
    expect(metadata.allowErrorForDataTypeAny).toBe(true);
    // Data types need CustomFunctionsRuntime 1.4, which the manifest does not ask for; with errors beside them Excel 2021
    // crashes. One argument that stands for any number has crashed Excel too.
    expect(JSON.stringify(metadata)).not.toMatch(/allowCustomData|repeating/);
    for (const { parameters } of metadata.functions) {
      for (const { type, dimensionality } of parameters) {
        expect({ type, dimensionality }).toEqual({ type: "any", dimensionality: "matrix" });
      }
    }
  });

  it("says what each function and argument is, in words that fit the formula helper", () => {
    for (const { id, description, helpUrl, parameters } of metadata.functions) {
      expect(helpUrl).toBe(`${HELP_URL}#${id.toLowerCase()}`);
      expect(description).toMatch(new RegExp(`\\. Example: =BRIM\\.${id}\\(.+\\)$`));
      expect(description.length, description).toBeLessThan(255);
      for (const { name, description: help } of parameters) {
        expect(help, `${id} ${name}`).toMatch(/^\S.*\.$/);
        expect(help.length, help).toBeLessThan(200);
      }
    }
  });

  it("keeps ids and arguments for ever", () => {
    const signatures = WORKSHEET_FUNCTIONS.map(
      ({ id, parameters }) =>
        `${id}(${parameters.map(({ name, optional }) => (optional ? `[${name}]` : name)).join(", ")})`,
    );
    expect(signatures).toEqual([
      "MIX(oxygen, [helium])",
      "MIXPART(mix, part)",
      "MOD(mix, units, [maxPpO2], [water])",
      "MINDEPTH(mix, units, [minPpO2], [water])",
      "OXYGENPP(depth, mix, units, [water])",
      "BESTMIX(depth, units, [maxPpO2], [water])",
      "EAD(depth, mix, units, [water])",
      "END(depth, mix, units, [oxygenNarcotic], [water])",
      "GASDENSITY(depth, mix, units, [water])",
      "FILLSTEPS(startPressure, startMix, endPressure, endMix, units, [topMix], [temperature], [oxygenSupply], [order], [gasModel])",
      "ADDGAS(gas, startPressure, startMix, endPressure, endMix, units, [topMix], [temperature], [oxygenSupply], [order], [gasModel])",
      "STOPAT(gas, startPressure, startMix, endPressure, endMix, units, [topMix], [temperature], [oxygenSupply], [order], [gasModel])",
      "MIXAFTER(startPressure, startMix, endPressure, topMix, units, [answer], [startTemperature], [endTemperature], [gasModel])",
      "TOPWITH(startPressure, startMix, endPressure, endMix, units, [answer], [temperature], [gasModel])",
      "DRAINTO(startPressure, startMix, endPressure, endMix, units, [topMix], [oxygenBankPressure], [temperature], [gasModel])",
      "MIXOF(steps, units, [answer], [gasModel])",
      "SETTLED(pressure, mix, fromTemperature, toTemperature, units, [gasModel])",
      "DECANT(donorVolume, donorPressure, receiverVolume, receiverPressure, mix, units, [gasModel])",
      "INJECT(mix, intakeFlow, [oxygenSupply])",
      "ZFACTOR(pressure, mix, units, [temperature])",
      "TESTDATE(stamp, [order])",
      "HYDRODUE(lastTest, rules, [class], [stampMeans])",
      "VISUALDUE(lastVisual, rules, [class], [stampMeans])",
      "FILLCHECK(fillDate, hydro, visual, oxygenRating, mix, method, rules)",
      "FREEGAS(cylinder, pressure, mix, units, [temperature], [gasModel])",
      "GASUSED(gas, cylinder, startPressure, startMix, endPressure, endMix, units, [topMix], [temperature], [oxygenSupply], [gasModel])",
      "FILLCOST(cylinder, startPressure, startMix, endPressure, endMix, prices, units, [topMix], [temperature], [oxygenSupply])",
      "LABELTEXT(pressure, analysedMix, analysedBy, fillDate, serial, units, [maxPpO2])",
      "PRESSURELIMIT(class, servicePressure, units, rules, [lastTest], [temperature], [mix])",
      "WATERVOLUME(capacity, servicePressure, units)",
      "FILLSLEFT(bankVolume, bankPressure, cylinder, startPressure, endPressure, mix, units)",
      "WHY(function, [argument1], [argument2], [argument3], [argument4], [argument5], [argument6], [argument7], [argument8], [argument9], [argument10], [argument11])",
    ]);
  });
});

describe("what is made from the definitions is up to date", () => {
  it("scripts/generate-function-docs.ts has nothing to change", async () => {
    for (const { path, text } of await generatedFiles()) {
      expect(readFileSync(path, "utf8"), `${path} is stale: npx tsx scripts/generate-function-docs.ts`).toBe(
        text,
      );
    }
  });

  it("every function has an example", () => {
    for (const { id, examples } of WORKSHEET_FUNCTIONS) expect(examples.length, id).toBeGreaterThan(0);
  });
});
