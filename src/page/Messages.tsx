import {
  Button,
  makeStyles,
  MessageBar,
  MessageBarActions,
  MessageBarBody,
  ProgressBar,
  tokens,
} from "@fluentui/react-components";
import { DismissRegular } from "@fluentui/react-icons";
import { useId } from "react";
import { CopyButton } from "../pane/kit/CopyButton";
import type { Problem } from "../session/problem";
import type { Work } from "./useWork";

const useStyles = makeStyles({
  messages: { flexShrink: 0, padding: "6px 12px", backgroundColor: tokens.colorNeutralBackground3 },
  work: { display: "grid", gridTemplateColumns: "1fr auto", alignItems: "center", gap: "4px 12px" },
  cancel: { gridColumn: "2", gridRow: "1 / span 2" },
});

/** How far opening or saving is, and the way to call it off. */
export function WorkMessage({ work }: { work: Work }) {
  const styles = useStyles();
  const id = useId();
  return (
    <div className={styles.messages}>
      <div className={styles.work}>
        <span id={id}>{work.doing} …</span>
        <ProgressBar value={work.share} aria-labelledby={id} />
        <Button size="small" className={styles.cancel} onClick={work.cancel}>
          Cancel
        </Button>
      </div>
    </div>
  );
}

/** What went wrong, in a sentence. */
export function ProblemMessage({ problem, onDismiss }: { problem: Problem; onDismiss: () => void }) {
  const styles = useStyles();
  return (
    <div className={styles.messages}>
      <MessageBar intent="error" layout="multiline" politeness="assertive">
        <MessageBarBody>{problem.sentence}</MessageBarBody>
        <MessageBarActions
          containerAction={
            <Button
              appearance="transparent"
              icon={<DismissRegular />}
              aria-label="Dismiss"
              onClick={onDismiss}
            />
          }
        >
          {problem.details !== "" && (
            <CopyButton what="details" text={() => `${problem.sentence}\n${problem.details}`} />
          )}
        </MessageBarActions>
      </MessageBar>
    </div>
  );
}

interface UnsavedMessageProps {
  readonly openName: string;
  readonly waitingName: string;
  readonly onOpen: () => void;
  readonly onSave: () => void;
  readonly onKeep: () => void;
}

/** Nothing typed is thrown away unasked. */
export function UnsavedMessage({ openName, waitingName, onOpen, onSave, onKeep }: UnsavedMessageProps) {
  const styles = useStyles();
  return (
    <div className={styles.messages}>
      <MessageBar intent="warning" layout="multiline" politeness="assertive">
        <MessageBarBody>
          {`${openName} has changes that are not saved. Save a copy first, or open ${waitingName} and lose them.`}
        </MessageBarBody>
        <MessageBarActions>
          <Button size="small" appearance="primary" onClick={onSave}>
            Save a copy
          </Button>
          <Button size="small" onClick={onOpen}>
            Open and lose changes
          </Button>
          <Button size="small" onClick={onKeep}>
            Keep working
          </Button>
        </MessageBarActions>
      </MessageBar>
    </div>
  );
}

/** Newer code has come; what is open goes on with the old one until the person says so. */
export function NewVersionMessage({ onReload }: { onReload: () => void }) {
  const styles = useStyles();
  return (
    <div className={styles.messages}>
      <MessageBar intent="info" layout="multiline">
        <MessageBarBody>
          A new version of Brimbook is here. Save what you changed, then reload.
        </MessageBarBody>
        <MessageBarActions>
          <Button size="small" onClick={onReload}>
            Reload the page
          </Button>
        </MessageBarActions>
      </MessageBar>
    </div>
  );
}
