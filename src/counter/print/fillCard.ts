import { UNIT_NAMES } from "../../gas/units";
import type { Card } from "./card";
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

/** The card as one printed page: steps to tick, blanks for readings, analyses and signatures. */
export function fillCard({
  serial,
  units,
  paper,
  way,
  facts,
  against,
  steps,
  stopsHold,
  blanks,
  cautions,
}: Card): PrintedPage {
  const unit = UNIT_NAMES[units].pressure;
  const blank = `<td><span class="blank"></span></td>`;
  const rows = steps.map(
    ({ what, change, stop, warm }) =>
      `<tr><td><span class="box"></span></td><td>${escaped(what)}<br><span class="quiet">${change}</span></td><td class="stop">${stop} <small>${unit}</small>${warm === undefined ? "" : `<br><span class="quiet">${warm}</span>`}</td>${blank.repeat(3)}</tr>`,
  );
  const written = blanks.map(
    ({ heading, labels }) =>
      `<section><h2>${heading}</h2><div class="blanks">${labels.map((label) => `<label>${label} <span class="blank"></span></label>`).join("")}</div></section>`,
  );
  return {
    title: `Fill card ${serial}`.trim(),
    paper,
    marginMm: 14,
    css: CSS,
    body: `<header>${MARK}<h1>Fill card</h1><span class="quiet">${escaped(way)}</span></header>
      <section class="facts">${facts.map(([what, fact]) => `<div><span class="quiet">${what}</span><strong>${escaped(fact)}</strong></div>`).join("")}</section>
      ${against === undefined ? "" : `<p><strong>${escaped(against)}</strong></p>`}
      <section><h2>Steps</h2><table><thead><tr><th></th><th>Step</th><th style="text-align:right;padding-right:5mm">Stop at, settled</th><th>Reading</th><th>Gas temp.</th><th>Initials</th></tr></thead><tbody>${rows.join("")}</tbody></table>
      <p class="quiet">${escaped(stopsHold)}</p></section>
      ${written.join("\n      ")}
      <section class="cautions">${cautions.map((line) => `<p>${escaped(line)}</p>`).join("")}</section>`,
  };
}
