import { Button, makeStyles, tokens } from "@fluentui/react-components";
import type { HouseSetting } from "../../audit/shop/houseSetting";
import { settingsFor } from "../../audit/shop/limits";
import { shopOf } from "../../audit/shop/shop";
import { COUNTRIES, countryRules, type CountryRules, type CylinderRules } from "../../cylinders/countryRules";
import { useAnnounce } from "../kit/announce";
import { Disclosure } from "../kit/Disclosure";
import { FigureField } from "./FigureField";
import type { Shop } from "./useShop";

const useStyles = makeStyles({
  area: { display: "flex", flexDirection: "column", gap: "4px" },
  title: { margin: 0, fontSize: tokens.fontSizeBase400, fontWeight: tokens.fontWeightSemibold },
  text: { margin: "4px 0", fontSize: tokens.fontSizeBase200, lineHeight: tokens.lineHeightBase200 },
  about: { margin: "0 0 6px 22px", fontSize: tokens.fontSizeBase200, lineHeight: tokens.lineHeightBase200 },
  fields: { display: "flex", flexDirection: "column", gap: "10px", margin: "2px 0 8px 22px" },
  reset: { alignSelf: "flex-start" },
});

/**
 * Every figure that the log is judged by, beside its source: those of the country's classes, and those of the house. The
 * shop may set its own; they are marked here, and listed on every report.
 */
export function Figures({ shop, country }: { shop: Shop; country: string }) {
  const styles = useStyles();
  if (!COUNTRIES.some(({ code }) => code === country)) {
    return (
      <p className={styles.text}>There are no rules here for “{country}”. Choose a country from the list.</p>
    );
  }
  const rules = countryRules(country);
  const settings = settingsFor(rules);
  const groups = [...new Set(settings.map(({ group }) => group))];
  return (
    <section aria-label={`Rules of ${rules.name}`} className={styles.area}>
      <h2 className={styles.title}>{rules.name}</h2>
      <p className={styles.text}>{rules.note}</p>
      <OwnFigures shop={shop} rules={rules} />
      {groups.map((group) => {
        const ofGroup = settings.filter((setting) => setting.group === group);
        const cylinder = rules.cylinders.find(({ name }) => name === group);
        const own = ofGroup.filter(({ id }) => shop.settings.house?.[id] !== undefined).length;
        return (
          <Disclosure
            key={group}
            title={group}
            heading="h3"
            hint={own > 0 ? `${own} of this shop's own` : undefined}
          >
            {cylinder && <ClassInWords cylinder={cylinder} />}
            {group === "Oxygen" && rules.oxygen.note !== undefined && (
              <p className={styles.about}>{rules.oxygen.note}</p>
            )}
            <Fields shop={shop} rules={rules} settings={ofGroup} />
          </Disclosure>
        );
      })}
    </section>
  );
}

function OwnFigures({ shop, rules }: { shop: Shop; rules: CountryRules }) {
  const styles = useStyles();
  const announce = useAnnounce();
  const { house = {} } = shop.settings;
  const own = settingsFor(rules).filter(({ id }) => house[id] !== undefined);
  if (own.length === 0) {
    return (
      <p className={styles.text}>
        Every figure stands as the country or the trade says. Open a group to set your own.
      </p>
    );
  }
  return (
    <>
      <p className={styles.text}>
        {own.length === 1 ? "One figure is" : `${own.length} figures are`} this shop&apos;s own; every report
        says so.
      </p>
      <Button
        size="small"
        className={styles.reset}
        onClick={() => {
          const ids = new Set(own.map(({ id }) => id));
          shop.change(({ house: all = {}, ...settings }) => ({
            ...settings,
            house: Object.fromEntries(Object.entries(all).filter(([id]) => !ids.has(id))),
          }));
          announce("All figures are as they came.");
        }}
      >
        Reset all
      </Button>
    </>
  );
}

function Fields(props: { shop: Shop; rules: CountryRules; settings: readonly HouseSetting[] }) {
  const styles = useStyles();
  const announce = useAnnounce();
  const { shop, rules, settings } = props;
  const asItComes = shopOf(rules);
  return (
    <div className={styles.fields}>
      {settings.map((setting) => (
        <FigureField
          key={setting.id}
          setting={setting}
          usual={setting.of(asItComes)}
          own={shop.settings.house?.[setting.id]}
          onChange={(value) => {
            shop.change(({ house = {}, ...others }) => {
              const rest = Object.entries(house).filter(([id]) => id !== setting.id);
              const own = value === undefined ? [] : [[setting.id, value] as const];
              return { ...others, house: Object.fromEntries([...rest, ...own]) };
            });
            announce(value === undefined ? "As it came." : "Kept. Check the log again with this figure.");
          }}
        />
      ))}
    </div>
  );
}

const CONFIDENCE_WORDS: Readonly<Record<CylinderRules["confidence"], string>> = {
  high: "Well sourced.",
  "medium-high": "Fairly well sourced.",
  medium: "Sourced in part: check the figures.",
  low: "Weakly sourced: check the figures.",
};

/** What is said of a class besides its figures. */
function ClassInWords({ cylinder }: { cylinder: CylinderRules }) {
  const styles = useStyles();
  const { hydro, visual, maxFills, note, confidence } = cylinder;
  const sentences = [
    hydro === null
      ? "No hydro is asked for."
      : hydro.months === 0
        ? `Not to be filled at all (${hydro.source}).`
        : "",
    visual === null ? "No visual is asked for." : "",
    maxFills === undefined ? "" : `At most ${maxFills.toLocaleString("en-US")} fills.`,
    note ?? "",
    CONFIDENCE_WORDS[confidence],
  ];
  return <p className={styles.about}>{sentences.filter((sentence) => sentence !== "").join(" ")}</p>;
}
