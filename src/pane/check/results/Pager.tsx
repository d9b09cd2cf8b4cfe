import { Button, makeStyles, tokens } from "@fluentui/react-components";
import { count } from "../report";
import { FINDINGS_PER_PAGE } from "./useFindings";

interface PagerProps {
  readonly page: number;
  readonly total: number;
  readonly onPage: (page: number) => void;
}

const useStyles = makeStyles({
  row: { display: "flex", flexWrap: "wrap", alignItems: "center", gap: "8px" },
  place: { fontSize: tokens.fontSizeBase200, flexGrow: 1 },
});

/** Which part of a long list is shown, and the way to the next. */
export function Pager({ page, total, onPage }: PagerProps) {
  const styles = useStyles();
  const from = page * FINDINGS_PER_PAGE;
  const to = Math.min(total, from + FINDINGS_PER_PAGE);
  return (
    <nav className={styles.row} aria-label="Pages of findings">
      <span className={styles.place}>
        {count(from + 1)}–{count(to)} of {count(total)}
      </span>
      <Button
        size="small"
        disabledFocusable={page === 0}
        onClick={() => {
          onPage(page - 1);
        }}
      >
        Previous
      </Button>
      <Button
        size="small"
        disabledFocusable={to === total}
        onClick={() => {
          onPage(page + 1);
        }}
      >
        Next
      </Button>
    </nav>
  );
}
