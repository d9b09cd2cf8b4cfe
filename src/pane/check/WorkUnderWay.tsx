import { Button, makeStyles, ProgressBar, tokens } from "@fluentui/react-components";
import { useId, type RefObject } from "react";
import type { Told } from "../../session/worker/told";

interface WorkUnderWayProps {
  readonly busy: Told;
  readonly onCancel: () => void;
  readonly cancelRef?: RefObject<HTMLButtonElement>;
}

const useStyles = makeStyles({
  row: { display: "grid", gridTemplateColumns: "1fr auto", alignItems: "center", gap: "4px 12px" },
  doing: { fontSize: tokens.fontSizeBase200 },
  bar: { gridColumn: "1" },
  cancel: { gridColumn: "2", gridRow: "1 / span 2" },
});

/** How far the work is, and the way to call it off. */
export function WorkUnderWay({ busy, onCancel, cancelRef }: WorkUnderWayProps) {
  const styles = useStyles();
  const id = useId();
  return (
    <div className={styles.row}>
      <span id={id} className={styles.doing}>
        {busy.doing}
      </span>
      <ProgressBar className={styles.bar} value={busy.share} aria-labelledby={id} />
      <Button ref={cancelRef} className={styles.cancel} size="small" onClick={onCancel}>
        Cancel
      </Button>
    </div>
  );
}
