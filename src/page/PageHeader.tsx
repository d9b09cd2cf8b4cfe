import { Button, makeStyles, tokens } from "@fluentui/react-components";
import { FolderOpenRegular, SaveCopyRegular } from "@fluentui/react-icons";
import { useRef } from "react";
import { Mark } from "../pane/kit/Mark";
import { NARROW } from "./narrow";
import type { Opened } from "./opened";

/** What the file picker offers. What a file really is, its bytes tell. */
const OFFERED = ".xlsx,.xlsm,.csv,.txt,.tsv,.ods";

interface PageHeaderProps {
  readonly opened: Opened | undefined;
  readonly onOpen: (file: File) => void;
  readonly onSaveCopy: () => void;
}

const useStyles = makeStyles({
  header: {
    display: "flex",
    alignItems: "center",
    gap: "8px",
    flexShrink: 0,
    padding: "6px 12px",
    borderBottom: `1px solid ${tokens.colorNeutralStroke2}`,
    backgroundColor: tokens.colorNeutralBackground3,
  },
  mark: { width: "24px", height: "24px", flexShrink: 0, color: tokens.colorBrandForeground1 },
  name: {
    margin: 0,
    fontSize: tokens.fontSizeBase400,
    lineHeight: tokens.lineHeightBase400,
    fontWeight: tokens.fontWeightSemibold,
  },
  file: {
    flexGrow: 1,
    minWidth: 0,
    overflow: "hidden",
    textOverflow: "ellipsis",
    whiteSpace: "nowrap",
    paddingLeft: "12px",
    color: tokens.colorNeutralForeground2,
  },
  kind: { color: tokens.colorNeutralForeground3 },
  button: { flexShrink: 0, whiteSpace: "nowrap", [NARROW]: { minWidth: "32px" } },
  wideOnly: { [NARROW]: { display: "none" } },
});

/** The product, the file that lies open, and what can be done with it. */
export function PageHeader({ opened, onOpen, onSaveCopy }: PageHeaderProps) {
  const styles = useStyles();
  const picker = useRef<HTMLInputElement>(null);
  return (
    <header className={styles.header}>
      <Mark className={styles.mark} />
      <h1 className={styles.name}>Brimbook</h1>
      <span className={styles.file} title={opened?.fileName}>
        {opened?.fileName}
        {opened?.sample && <span className={styles.kind}> (invented sample)</span>}
      </span>
      <input
        ref={picker}
        type="file"
        accept={OFFERED}
        hidden
        aria-label="File to open"
        onChange={({ target }) => {
          const file = target.files?.[0];
          /* Without this the same file could not be chosen again. */
          target.value = "";
          if (file) onOpen(file);
        }}
      />
      <Button
        className={styles.button}
        icon={<FolderOpenRegular />}
        onClick={() => picker.current?.click()}
        aria-label="Open file"
      >
        <span className={styles.wideOnly}>Open file</span>
      </Button>
      <Button
        className={styles.button}
        icon={<SaveCopyRegular />}
        disabled={!opened}
        onClick={onSaveCopy}
        aria-label="Save a copy"
      >
        <span className={styles.wideOnly}>Save a copy</span>
      </Button>
    </header>
  );
}
