import { inFill } from "../../judge/lacks";
import { isLack, known } from "../../record/readField";
import { PASS, type Rule } from "../../judge/rule";

/** A valve of another thread than the neck holds for a while and then flies out: 49 CFR 173.301(a)(10), accident notes. */
export const threadsDiffer: Rule = {
  id: "V14",
  rank: 31,
  title: "Valve thread is not that of the neck",
  needs: [["neckThread"], ["valveThread"]],
  judge(filled) {
    const neck = known(filled, "neckThread");
    if (isLack(neck)) return neck;
    const valve = known(filled, "valveThread");
    if (isLack(valve)) return valve;
    if (neck.value === valve.value || threadOf(neck.value) === threadOf(valve.value)) return PASS;
    return {
      kind: "fault",
      severity: "stop",
      basis: "practice",
      source: "49 CFR 173.301(a)(10); Dutch accident notes",
      message: `The neck is ${neck.value}, the valve ${valve.value}: such a valve can fly out under pressure.`,
      todo: "Empty it at once, and have a valve of the right thread put in.",
      at: inFill(filled, valve.at),
    };
  },
};

/** `M25 x 2`, `M25×2 ISO` and `m25x2` are one thread; so are `3/4 NPSM` and `0.75"-14 NPSM`. */
function threadOf(written: string): string {
  const plain = written
    .toUpperCase()
    .replace(/×/g, "X")
    .replace(/0?\.75"?|¾/g, "3/4")
    .replace(/["\s-]/g, "");
  const metric = /M\d{2}X\d(?:\.\d)?/.exec(plain)?.[0];
  if (metric !== undefined) return metric;
  if (/NPSM/.test(plain)) return "3/4NPSM";
  return /BSP|^[GR]3\/4|3\/4G$/.test(plain) ? "3/4BSP" : plain;
}
