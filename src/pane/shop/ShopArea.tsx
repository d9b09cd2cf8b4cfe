import { makeStyles, tokens } from "@fluentui/react-components";
import { useAnnounce } from "../kit/announce";
import { AirTests } from "./AirTests";
import { Figures } from "./Figures";
import { GasSources } from "./GasSources";
import { RulesAndUnits } from "./RulesAndUnits";
import type { Shop } from "./useShop";

const useStyles = makeStyles({
  area: { padding: "12px", display: "flex", flexDirection: "column", gap: "14px" },
  small: {
    margin: 0,
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
    color: tokens.colorNeutralForeground3,
  },
});

/** Rules & shop: whose rules, which units, every figure of them, the shop's air tests and sources. */
export function ShopArea({ shop }: { shop: Shop }) {
  const styles = useStyles();
  const announce = useAnnounce();
  const { country, units } = shop.settings;
  return (
    <div className={styles.area}>
      <RulesAndUnits
        country={country}
        units={units}
        onCountry={(chosen) => {
          if (chosen === undefined) return;
          shop.change((settings) => ({ ...settings, country: chosen }));
          announce("Kept. Check the log again under these rules.");
        }}
        onUnits={(chosen) => {
          shop.change((settings) => ({ ...settings, units: chosen }));
          announce("Kept.");
        }}
      />
      <p className={styles.small}>
        {shop.kept
          ? "Kept in this workbook."
          : "This window cannot keep the answer: it holds until the pane closes."}
      </p>
      {country !== undefined && <Figures shop={shop} country={country} />}
      <section aria-label="The shop's own records">
        <AirTests shop={shop} />
        <GasSources shop={shop} />
      </section>
    </div>
  );
}
