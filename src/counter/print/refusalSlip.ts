import type { Paper } from "../../sheet/draft/draft";
import type { Receipt } from "../receive/receipt";
import { escaped, MARK, type PrintedPage } from "./page";

const CSS = `
  .slip { border: 1.5pt solid #14181b; padding: 6mm; max-width: 150mm; display: grid; gap: 4mm; }
  h1 { font-size: 16pt; display: flex; gap: 3mm; align-items: center; }
  li { margin: 1mm 0; }
  .line { border-bottom: 0.5pt solid #14181b; height: 9mm; }
`;

/** What the customer takes home where a cylinder was not filled: why, and what to have done. */
export function refusalSlip(receipt: Receipt, paper: Paper): PrintedPage {
  const reasons = [...receipt.reasons, ...receipt.wrongInside].map(
    ({ says, todo, source }) =>
      `<li><strong>${escaped(says)}</strong> ${escaped(todo)} <span class="quiet">${escaped(source)}</span></li>`,
  );
  return {
    title: `Not filled ${receipt.serial}`,
    paper,
    marginMm: 15,
    css: CSS,
    body: `<section class="slip"><h1>${MARK} Not filled</h1>
      <p>Cylinder <strong>${escaped(receipt.serial)}</strong></p>
      <ul>${reasons.join("")}</ul>
      <p>We keep to this for your safety and ours. Bring the cylinder back once this is done, with the paper that shows it.</p>
      <p class="quiet">Date, and who received it:</p><div class="line"></div></section>`,
  };
}
