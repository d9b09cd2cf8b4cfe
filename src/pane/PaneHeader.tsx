import { makeStyles, tokens } from "@fluentui/react-components";

const useStyles = makeStyles({
  header: {
    display: "flex",
    alignItems: "center",
    gap: "8px",
    // Excel lays its own menu over the top right corner.
    padding: "10px 44px 6px 12px",
  },
  mark: { width: "24px", height: "24px", color: tokens.colorBrandForeground1, flexShrink: 0 },
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
      <svg viewBox="0 0 24 24" className={styles.mark} aria-hidden="true">
        <path
          d="M5.6 19.4a9 9 0 1 1 12.8 0"
          fill="none"
          stroke="currentColor"
          strokeWidth="3"
          strokeLinecap="round"
        />
        <path d="M12 13 17.2 17.6" fill="none" stroke="currentColor" strokeWidth="2" strokeLinecap="round" />
        <circle cx="12" cy="13" r="1.8" fill="currentColor" />
      </svg>
      <h1 className={styles.title}>Brimbook</h1>
    </header>
  );
}
