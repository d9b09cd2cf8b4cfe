import type { ReportPage } from "../../sheet/draft/sheetOf";
import type { MonthOptions } from "./options";
import type { Period } from "./period";

export function pageOf(
  { paper, shopName, program }: Pick<MonthOptions, "paper" | "shopName" | "program">,
  { text }: Period,
  landscape: boolean,
): ReportPage {
  const shop = shopName === undefined ? "" : `${shopName}, `;
  return { paper, landscape, footer: `${shop}fills of ${text} (${program})`, own: "month report" };
}
