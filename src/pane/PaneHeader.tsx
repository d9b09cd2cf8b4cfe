import { makeStyles, tokens } from "@fluentui/react-components";
import { Mark } from "./kit/Mark";

const useStyles = makeStyles({
  header: {
    display: "flex",
    alignItems: "center",
    gap: "8px",
    // Excel lays its own menu over the top right corner.
    padding: "10px 44px 6px 12px",
  },
  mark: {
    width: "24px",
    height: "24px",
    flexShrink: 0,
    color: tokens.colorBrandForeground1,
    "@media (forced-colors: active)": { color: "CanvasText" },
  },
  title: {
    margin: 0,
    fontSize: tokens.fontSizeBase400,
    lineHeight: tokens.lineHeightBase400,
    fontWeight: tokens.fontWeightSemibold,
    letterSpacing: "0.01em",
  },
});

/** The mark, a gauge arc filled to the brim, and the name. */
export function PaneHeader() {
  const styles = useStyles();
  return (
    <header className={styles.header}>
      <Mark className={styles.mark} />
      <h1 className={styles.title}>Brimbook</h1>
    </header>
  );
}
