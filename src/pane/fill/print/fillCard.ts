import type { Receipt } from "../../../audit/receive";
import { gaugeReading, UNIT_NAMES, type Units } from "../../../gas/units";
import { nameMix } from "../../../gas/nameMix";
import type { FillModel } from "../model";
import { CAUTIONS, degreesText, depthText, depthWarnings, partsText, pressureErrorText, pressureText, reading, stepText } from "../words"; // prettier-ignore
import { escaped, MARK, type PrintedPage } from "./page";

const CSS = `
  body { display: grid; gap: 5mm; }
  header { display: flex; align-items: center; gap: 3mm; border-bottom: 1.2pt solid #126983; padding-bottom: 2mm; }
  h1 { font-size: 15pt; flex: 1; }
  h2 { font-size: 10.5pt; margin-bottom: 1.5mm; }
  .facts { display: grid; grid-template-columns: 1fr 1fr 1fr; gap: 1.5mm 6mm; }
  .facts div { display: flex; justify-content: space-between; border-bottom: 0.3pt solid #b9b3a8; }
  table { border-collapse: collapse; width: 100%; }
  th { text-align: left; font-weight: 600; font-size: 8.5pt; color: #4d5357; padding: 0 2mm 1mm 0; }
  td { border-top: 0.4pt solid #7d8386; padding: 2mm 2mm 2mm 0; vertical-align: middle; }
  td.stop { font-size: 20pt; font-weight: 600; white-space: nowrap; text-align: right; padding-right: 5mm; }
  td.stop small { font-size: 10pt; font-weight: 400; }
  .box { width: 5mm; height: 5mm; border: 0.9pt solid #14181b; display: inline-block; }
  .blank { border-bottom: 0.5pt solid #14181b; min-width: 22mm; display: inline-block; height: 6mm; }
  .blanks { display: grid; grid-template-columns: 1fr 1fr; gap: 3mm 8mm; }
  .blanks label { display: flex; gap: 3mm; align-items: end; }
  .blanks .blank { flex: 1; }
  .cautions { border: 0.8pt solid #14181b; padding: 2.5mm 3mm; }
`;

/** The card that goes with the cylinder to the panel: steps to tick, blanks for readings, analyses and signatures. */
export function fillCard(
  model: FillModel,
  receipt: Receipt | undefined,
  units: Units,
  today: string,
): PrintedPage | undefined {
  const { chosen, wanted, depths, station, exactness } = model;
  if (!chosen?.plan || !chosen.order || !wanted) return undefined;
  const unit = UNIT_NAMES[units].pressure;
  const warm = model.heat;
  let before = chosen.order.startPressureBar;
  const steps = chosen.plan.steps.map((step, index) => {
    const change = gaugeReading(step.stopBar, units) - gaugeReading(before, units);
    before = step.stopBar;
    const warmStop =
      warm && step.step !== "drain"
        ? `<br><span class="quiet">${reading(warm.warmStops[index]!, units)} ${unit} at ${degreesText(warm.warmK, units)}</span>`
        : "";
    return `<tr><td><span class="box"></span></td><td>${index + 1}. ${escaped(stepText(step))}<br><span class="quiet">${change < 0 ? "let out" : "add"} ${Math.abs(change).toFixed(units === "us" ? 0 : 1)} ${unit}</span></td><td class="stop">${reading(step.stopBar, units)} <small>${unit}</small>${warmStop}</td><td><span class="blank"></span></td><td><span class="blank"></span></td><td><span class="blank"></span></td></tr>`;
  });
  const facts: readonly (readonly [string, string])[] = [
    ["Cylinder", receipt?.serial ?? ""],
    ["Size", receipt?.size?.name ?? (model.volumeL === undefined ? "" : `${model.volumeL} L`)],
    ["Date", today],
    ["In it", `${pressureText(wanted.startBar, units)} ${nameMix(wanted.startMix)}`],
    ["Wanted", `${pressureText(wanted.endBar, units)} ${nameMix(wanted.endMix)}`],
    ["Expected", partsText(chosen.plan.result.mix)],
    ["Settled at", degreesText(chosen.order.temperatureK, units)],
    [
      "MOD, as planned",
      depths?.mod === undefined ? "" : `${depthText(depths.mod, units)} at ${station.maxPpO2}`,
    ],
    ["Limit", receipt?.limit ? pressureText(receipt.limit.limitBar, units) : "not known"],
  ];
  const may =
    chosen.may === "yes"
      ? ""
      : `<p><strong>${chosen.may === "no" ? "Not this way" : "Not known"}:</strong> ${escaped(chosen.why.join(" "))}</p>`;
  const warnings = depths ? depthWarnings(depths, units) : [];
  return {
    title: `Fill card ${receipt?.serial ?? ""}`.trim(),
    paper: units === "us" ? "letter" : "A4",
    marginMm: 14,
    css: CSS,
    body: `<header>${MARK}<h1>Fill card</h1><span class="quiet">${escaped(chosen.title)}</span></header>
      <section class="facts">${facts.map(([what, fact]) => `<div><span class="quiet">${what}</span><strong>${escaped(fact)}</strong></div>`).join("")}</section>
      ${may}
      <section><h2>Steps</h2><table><thead><tr><th></th><th>Step</th><th style="text-align:right;padding-right:5mm">Stop at, settled</th><th>Reading</th><th>Gas temp.</th><th>Initials</th></tr></thead><tbody>${steps.join("")}</tbody></table>
      <p class="quiet">Stops hold for gas settled at ${degreesText(chosen.order.temperatureK, units)}; a gauge may be off by ±${pressureErrorText(exactness?.errors.gaugeBar ?? 0, units)}. Close each bank before the next is opened.</p></section>
      <section><h2>Cool, top, analyse</h2><div class="blanks">${blanks(["Reading once cool", "Topped to", "Analyser on air / on oxygen", "Oxygen / helium", "Post 2: oxygen / helium", "Analysed by"])}</div></section>
      <section><h2>Hand over</h2><div class="blanks">${blanks(["Customer's own analysis", "MOD read and understood", "Name", "Certification", "Customer's signature", "Filled by"])}</div></section>
      <section class="cautions">${[...warnings, ...CAUTIONS].map((line) => `<p>${escaped(line)}</p>`).join("")}</section>`,
  };
}

function blanks(labels: readonly string[]): string {
  return labels.map((label) => `<label>${label} <span class="blank"></span></label>`).join("");
}
