import type { HousePattern, HousePatterns, PatternBy } from "../../../../audit/lists/housePatterns";
import { Disclosure } from "../../../kit/Disclosure";
import { count, counted } from "../../report";
import { PatternChart } from "./PatternChart";
import { points } from "./points";
import { useFormStyles } from "./useFormStyles";

/** The surest of them; the table has all. */
const CHARTED = 8;

/** The station's own bias: how far blends of one person, method or bank lie from what was ordered. */
export function Patterns({ patterns: { patterns, blends, leftOut } }: { patterns: HousePatterns }) {
  const styles = useFormStyles();
  if (patterns.length === 0)
    return (
      <p className={styles.text}>
        {counted(blends, "blend")} ordered and analysed: too few of one person, method or bank to tell a habit
        from chance. Five show the first pattern.
      </p>
    );
  const biases = patterns.filter(({ isBias }) => isBias);
  const charted = patterns.slice(0, CHARTED);
  return (
    <div className={styles.answer}>
      {biases.length === 0 ? (
        <p className={styles.line}>No bias: every mean lies within what chance explains.</p>
      ) : (
        <ul className={styles.line}>
          {biases.map((pattern) => (
            <li key={nameOf(pattern)}>{inWords(pattern)}</li>
          ))}
        </ul>
      )}
      <PatternChart patterns={charted.map((pattern) => ({ ...pattern, name: nameOf(pattern) }))} />
      <p className={styles.text}>
        Analysed less ordered, in points of gas: the mean, and the span that holds it with 95 % confidence.
        From {counted(blends, "blend")}; {count(leftOut)} further off than 3 points left out, as they are
        faults and no habit.
        {charted.length < patterns.length && ` The ${CHARTED} surest of ${patterns.length} are drawn.`}
      </p>
      <Disclosure title="Table of these figures">
        <table className={styles.table}>
          <thead>
            <tr>
              <th scope="col">Whose blends</th>
              <th scope="col">Fills</th>
              <th scope="col">Mean</th>
              <th scope="col">95 % span</th>
            </tr>
          </thead>
          <tbody>
            {patterns.map((pattern) => (
              <tr key={nameOf(pattern)}>
                <th scope="row">{nameOf(pattern)}</th>
                <td>{count(pattern.fills)}</td>
                <td>{points(pattern.meanPoints)}</td>
                <td>
                  {points(pattern.leastPoints)} to {points(pattern.mostPoints)}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </Disclosure>
    </div>
  );
}

const BY_WORDS: Readonly<Record<PatternBy, string>> = { filledBy: "Filled by", method: "By", source: "From" };

/** `Filled by R.`, `By partial pressure, helium`. */
function nameOf({ by, name, gas }: HousePattern): string {
  return `${BY_WORDS[by]} ${name}${gas === "helium" ? ", helium" : ""}`;
}

function inWords(pattern: HousePattern): string {
  const { gas, meanPoints, fills } = pattern;
  const way = meanPoints > 0 ? "over" : "under";
  return `${nameOf(pattern)}: ${Math.abs(meanPoints).toFixed(1)} points of ${gas} ${way} what was ordered, in ${counted(fills, "fill")}. Check the analyser's calibration and the stop pressures.`;
}
