import { makeStyles, Radio, RadioGroup, tokens } from "@fluentui/react-components";
import { SeverityMark } from "../kit/SeverityMark";
import { useFilling } from "./FillContext";
import { TOUCH, useFillStyles } from "./styles";
import { waySaid } from "../../counter/plan/planSaid";

const useStyles = makeStyles({
  way: { minHeight: TOUCH, alignItems: "flex-start" },
  why: { display: "block", fontSize: tokens.fontSizeBase200, lineHeight: tokens.lineHeightBase200 },
  refused: { display: "grid", gridTemplateColumns: "14px minmax(0, 1fr)", gap: "8px", padding: "6px 8px", "& svg": { marginTop: "3px" } },
}); // prettier-ignore

/** Every way to make the fill, the cheapest safe one first; the person chooses. */
export function WaysList() {
  const styles = useFillStyles();
  const own = useStyles();
  const { model, change, units } = useFilling();
  const { ways, chosen } = model;
  const possible = ways.filter(({ plan }) => plan);
  return (
    <section aria-label="Ways to do it" data-part="ways">
      <h3 className={styles.heading}>Ways to do it</h3>
      <RadioGroup
        value={chosen?.key ?? ""}
        aria-label="Ways to do it"
        onChange={(_, { value }) => {
          change((before) => ({ ...before, way: value }));
        }}
      >
        {possible.map((way) => (
          <Radio
            key={way.key}
            className={own.way}
            value={way.key}
            label={
              <>
                {way.title}
                <span className={own.why}>{waySaid(way, units)}</span>
              </>
            }
          />
        ))}
      </RadioGroup>
      {ways
        .filter(({ plan }) => !plan)
        .map((way) => (
          <div key={way.key} className={own.refused}>
            <SeverityMark mark="stop" />
            <span>
              {way.title}
              <span className={own.why}>{waySaid(way, units)}</span>
            </span>
          </div>
        ))}
    </section>
  );
}
