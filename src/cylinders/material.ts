import type { Material } from "./classStamp";

/**
 * What a cylinder is made of, in the words of a log; `undefined` where a word in it is not known. A liner of metal makes
 * a composite no metal cylinder.
 */
export function readMaterial(text: string): Material | undefined {
  const words = text
    .normalize("NFC")
    .toLowerCase()
    .split(/[^\p{L}\d]+/u)
    .filter((word) => word !== "" && !BESIDE.has(word) && !/^\d{1,3}$/.test(word));
  const said = words.map((word) => MATERIALS.get(word));
  if (said.includes(undefined)) return undefined;
  if (said.includes("composite")) return "composite";
  return new Set(said).size === 1 ? said[0] : undefined;
}

/** Words beside the material that change nothing of it. */
const BESIDE: ReadonlySet<string> = new Set(
  "alloy cylinder cyl tank bottle bar psi l lined liner seamless galvanised galvanized painted hot dipped t6".split(
    " ",
  ),
);

const WORDS: Readonly<Record<Material, string>> = {
  aluminium: "aluminium aluminum aluminio alluminio alumiini alu alum al 6061 6351",
  steel: "steel stahl acier acero acciaio staal stål stal teräs st fe crmo chromoly",
  composite:
    "composite comp composit compositie komposit kompositt komposiitti composito compuesto carbon carbone carbonio carbono " +
    "kohlefaser koolstof hiilikuitu kevlar aramid aramide fibre fiber fibra fibreglass fiberglass glasfaser cfk gfk wrapped",
};

const MATERIALS: ReadonlyMap<string, Material> = new Map(
  Object.entries(WORDS).flatMap(([material, words]) =>
    words.split(" ").map((word) => [word, material as Material] as const),
  ),
);
