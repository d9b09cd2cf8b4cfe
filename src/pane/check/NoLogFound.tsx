import { Button, makeStyles, tokens } from "@fluentui/react-components";

interface NoLogFoundProps {
  readonly onLookAgain: () => void;
  readonly onOpenSample: (() => void) | undefined;
}

const useStyles = makeStyles({
  box: {
    padding: "12px",
    borderRadius: tokens.borderRadiusMedium,
    border: `1px solid ${tokens.colorNeutralStroke2}`,
    backgroundColor: tokens.colorNeutralBackground1,
  },
  title: { margin: "0 0 4px", fontSize: tokens.fontSizeBase300, fontWeight: tokens.fontWeightSemibold },
  text: { margin: "0 0 8px" },
  actions: { display: "flex", flexWrap: "wrap", gap: "8px" },
});

/** What makes a log, told to somebody whose workbook has none. */
export function NoLogFound({ onLookAgain, onOpenSample }: NoLogFoundProps) {
  const styles = useStyles();
  return (
    <section className={styles.box}>
      <h2 className={styles.title}>No fill log found here</h2>
      <p className={styles.text}>
        A log has one fill in a row, under headings within the first 30 rows, such as Date, Serial, Start psi,
        End psi, Mix, Analysed, Filled by. Hydro, visual and oxygen rating stand in the same row, or in a
        register sheet with one cylinder in a row and the same serials.
      </p>
      <div className={styles.actions}>
        <Button size="small" onClick={onLookAgain}>
          Look again
        </Button>
        {onOpenSample && (
          <Button size="small" onClick={onOpenSample}>
            Try it on a sample log
          </Button>
        )}
      </div>
    </section>
  );
}
