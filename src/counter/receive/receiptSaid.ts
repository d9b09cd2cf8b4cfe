import { nameMix } from "../../gas/nameMix";
import type { Units } from "../../gas/units";
import { partsText, percentText, pressureText, verdictText } from "../words";
import type { MethodVerdict, Receipt, RefusalReason } from "./receipt";

/** A receipt in words, the same on screen and on the command line. */
export interface ReceiptSaid {
  readonly verdict: string;
  readonly cylinder: string;
  readonly against: readonly RefusalReason[];
  readonly lines: readonly string[];
  readonly facts: readonly (readonly [what: string, fact: string])[];
  readonly inside: string | undefined;
}

export function receiptSaid(receipt: Receipt, units: Units): ReceiptSaid {
  const { verdict, limit, rating, maxOxygen, serial, shopNumber, size, owner } = receipt;
  return {
    verdict: verdictText(receipt),
    cylinder: [serial, shopNumber, size?.name, owner].filter(Boolean).join(" · "),
    against: [...receipt.reasons, ...receipt.wrongInside],
    lines: [
      ...(verdict === "not known"
        ? [
            `Not known is no leave to fill: ${receipt.unknowns.join("; ")}. Find it out and write it down first.`,
          ]
        : []),
      ...receipt.good,
      ...receipt.remarks,
    ],
    facts: [
      [
        "Oxygen rating",
        maxOxygen !== undefined && maxOxygen < 1 ? `${rating}, mixes to ${percentText(maxOxygen)}` : rating,
      ],
      ["Air", mayText(receipt.air, verdict)],
      ["Partial pressure", mayText(receipt.pureOxygen, verdict)],
      [
        "Pressure limit",
        limit ? `${pressureText(limit.limitBar, units)}${limit.plus ? " (plus)" : ""}` : "not known",
      ],
    ],
    inside: insideText(receipt),
  };
}

/** What a method that its rating allows still waits for. */
const ALLOWED = {
  fill: "yes",
  "do not fill": "not as it is",
  "not known": "not before the above is known",
  "empty it first": "yes, once it is empty",
  "analyse it first": "yes, once it is analysed",
} as const;

function mayText({ may, why }: MethodVerdict, verdict: Receipt["verdict"]): string {
  return may === "yes" ? ALLOWED[verdict] : `${may}: ${why}`;
}

const BY_WORDS = { analysis: "analysis", "mass balance": "the readings", order: "the order" } as const;

function insideText({ inside }: Receipt): string | undefined {
  if (!inside) return undefined;
  const { mix, date, mixBy, doubt } = inside;
  return [
    `Probably inside: ${mix ? `${nameMix(mix)} (${partsText(mix)})` : "not known"}`,
    date === undefined ? "" : `, filled ${date}`,
    mixBy === undefined ? "" : `, by ${BY_WORDS[mixBy]}`,
    `. Analyse if in doubt${doubt === undefined ? "" : `: ${doubt}`}.`,
  ].join("");
}
