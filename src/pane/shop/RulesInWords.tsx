import { makeStyles, tokens } from "@fluentui/react-components";
import { COUNTRIES, countryRules, type CylinderRules, type Interval } from "../../cylinders/countryRules";
import { BASIS_WORDS } from "../kit/basisWords";
import { Disclosure } from "../kit/Disclosure";

const useStyles = makeStyles({
  title: { margin: 0, fontSize: tokens.fontSizeBase400, fontWeight: tokens.fontWeightSemibold },
  text: { margin: "4px 0", fontSize: tokens.fontSizeBase200, lineHeight: tokens.lineHeightBase200 },
  facts: {
    display: "grid",
    gridTemplateColumns: "auto 1fr",
    gap: "4px 10px",
    margin: "0 0 6px 22px",
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
    "& dd": { margin: 0 },
    "& dt": { color: tokens.colorNeutralForeground3 },
  },
  source: { display: "block", color: tokens.colorNeutralForeground3 },
});

/** What is checked under a country's rules, each figure with who says so. */
export function RulesInWords({ country }: { country: string }) {
  const styles = useStyles();
  if (!COUNTRIES.some(({ code }) => code === country)) {
    return (
      <p className={styles.text}>There are no rules here for “{country}”. Choose a country from the list.</p>
    );
  }
  const rules = countryRules(country);
  const { oxygen } = rules;
  return (
    <section aria-label={`Rules of ${rules.name}`}>
      <h2 className={styles.title}>{rules.name}</h2>
      <p className={styles.text}>{rules.note}</p>
      {rules.cylinders.map((cylinder) => (
        <Disclosure key={cylinder.id} title={cylinder.name} heading="h3">
          <dl className={styles.facts}>
            <dt>Hydro</dt>
            <dd>{interval(cylinder.hydro, styles.source)}</dd>
            <dt>Visual</dt>
            <dd>{interval(cylinder.visual, styles.source)}</dd>
            {cylinder.eddyCurrent && (
              <>
                <dt>Eddy current</dt>
                <dd>{interval(cylinder.eddyCurrent, styles.source)}</dd>
              </>
            )}
            {limits(cylinder).map(([what, limit]) => (
              <FactPair key={what} what={what} limit={limit} />
            ))}
            <dt>Sourced</dt>
            <dd>{CONFIDENCE_WORDS[cylinder.confidence]}</dd>
          </dl>
          {cylinder.note !== undefined && <p className={styles.text}>{cylinder.note}</p>}
        </Disclosure>
      ))}
      <Disclosure title="Oxygen" heading="h3">
        <dl className={styles.facts}>
          <dt>“Air only”</dt>
          <dd>
            up to {oxygen.airOnlyMaxPercent} %<span className={styles.source}>{oxygen.airOnlySource}</span>
          </dd>
          <dt>Oxygen clean</dt>
          <dd>
            needed where gas above {oxygen.cleanAbovePercent} % flows in
            <span className={styles.source}>
              {BASIS_WORDS[oxygen.cleanBasis]}: {oxygen.cleanSource}
            </span>
          </dd>
          <dt>A cleaning holds</dt>
          <dd>
            {months(oxygen.cleanMonths)}
            <span className={styles.source}>{oxygen.cleanMonthsSource}</span>
          </dd>
        </dl>
        {oxygen.note !== undefined && <p className={styles.text}>{oxygen.note}</p>}
      </Disclosure>
    </section>
  );
}

function FactPair({ what, limit }: { what: string; limit: string }) {
  return (
    <>
      <dt>{what}</dt>
      <dd>{limit}</dd>
    </>
  );
}

const CONFIDENCE_WORDS: Readonly<Record<CylinderRules["confidence"], string>> = {
  high: "well",
  "medium-high": "fairly well",
  medium: "in part: check",
  low: "weakly: check",
};

function limits(cylinder: CylinderRules): readonly (readonly [string, string])[] {
  const { serviceLifeMonths, maxFills, oxygenMaxPercent } = cylinder;
  return [
    ...(serviceLifeMonths === undefined ? [] : [["Service life", months(serviceLifeMonths)] as const]),
    ...(maxFills === undefined ? [] : [["Fills", `at most ${maxFills.toLocaleString("en-US")}`] as const]),
    ...(oxygenMaxPercent === undefined ? [] : [["Oxygen", `at most ${oxygenMaxPercent} %`] as const]),
  ];
}

function interval(asked: Interval | null, sourceClass: string) {
  if (asked === null) return "no such test is asked for";
  const { months: every, firstMonths, basis, source } = asked;
  return (
    <>
      {every === 0 ? "not to be filled at all" : `every ${months(every)}`}
      {firstMonths !== undefined && `, the first after ${months(firstMonths)}`}
      <span className={sourceClass}>
        {BASIS_WORDS[basis]}: {source}
      </span>
    </>
  );
}

/** `5 years` or `30 months`. */
function months(n: number): string {
  if (n % 12 !== 0) return `${n} months`;
  return n === 12 ? "12 months" : `${n / 12} years`;
}
