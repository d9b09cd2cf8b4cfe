import { makeStyles, tokens } from "@fluentui/react-components";
import { ChevronDown16Regular, ChevronRight16Regular } from "@fluentui/react-icons";
import { useId, useState, type ReactNode } from "react";

interface DisclosureProps {
  readonly title: ReactNode;
  /** Whether the title is a heading of the pane, and of which level. */
  readonly heading?: "h2" | "h3";
  /** What it says while closed, beside the title. */
  readonly hint?: ReactNode;
  readonly initiallyOpen?: boolean;
  readonly children: ReactNode;
  /** Where somebody else opens and closes it. */
  readonly open?: boolean;
  readonly onToggle?: (open: boolean) => void;
}

const useStyles = makeStyles({
  heading: { margin: 0, font: "inherit" },
  button: {
    display: "grid",
    gridTemplateColumns: "16px 1fr",
    columnGap: "6px",
    alignItems: "start",
    width: "100%",
    padding: "6px 0",
    border: "none",
    background: "none",
    color: "inherit",
    font: "inherit",
    textAlign: "left",
    cursor: "pointer",
    borderRadius: tokens.borderRadiusMedium,
    ":hover": { color: tokens.colorBrandForeground1 },
    ":focus-visible": { outline: `2px solid ${tokens.colorStrokeFocus2}`, outlineOffset: "1px" },
    "& svg": { marginTop: "2px" },
  },
  title: { fontWeight: tokens.fontWeightSemibold },
  hint: { display: "block", fontSize: tokens.fontSizeBase200, color: tokens.colorNeutralForeground3 },
  content: { paddingBottom: "4px" },
});

/** A heading that opens and closes what is under it. */
export function Disclosure(props: DisclosureProps) {
  const styles = useStyles();
  const id = useId();
  const [ownOpen, setOwnOpen] = useState(props.initiallyOpen ?? false);
  const open = props.open ?? ownOpen;
  const toggle = () => {
    setOwnOpen(!open);
    props.onToggle?.(!open);
  };
  const Heading = props.heading ?? "div";
  return (
    <div>
      <Heading className={styles.heading}>
        <button
          type="button"
          className={styles.button}
          aria-expanded={open}
          aria-controls={open ? id : undefined}
          onClick={toggle}
        >
          {open ? <ChevronDown16Regular /> : <ChevronRight16Regular />}
          <span>
            <span className={props.heading && styles.title}>{props.title}</span>
            {props.hint !== undefined && <span className={styles.hint}>{props.hint}</span>}
          </span>
        </button>
      </Heading>
      {open && (
        <div id={id} className={styles.content}>
          {props.children}
        </div>
      )}
    </div>
  );
}
