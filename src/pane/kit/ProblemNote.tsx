import { Button, MessageBar, MessageBarActions, MessageBarBody } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { CopyButton } from "./CopyButton";
import type { Problem } from "../../session/problem";

interface ProblemNoteProps {
  readonly problem: Problem;
  readonly onTryAgain?: () => void;
}

/** An error in its place: the sentence, a way to try again, and details for whoever is asked to help. */
export function ProblemNote({ problem, onTryAgain }: ProblemNoteProps) {
  return (
    <MessageBar intent="error" layout="multiline" politeness="assertive">
      <MessageBarBody>{problem.sentence}</MessageBarBody>
      {(onTryAgain !== undefined || problem.details !== "") && (
        <MessageBarActions>
          {onTryAgain && (
            <Button size="small" onClick={onTryAgain}>
              Try again
            </Button>
          )}
          {problem.details !== "" && (
            <CopyButton what="details" text={() => `${problem.sentence}\n${problem.details}`} />
          )}
        </MessageBarActions>
      )}
    </MessageBar>
  );
}

interface NoticeProps {
  readonly children: ReactNode;
  readonly actions?: ReactNode;
  /** `success` where what was asked for is done. */
  readonly intent?: "warning" | "success";
}

/** Something the user should know, without it being an error. */
export function Notice({ children, actions, intent = "warning" }: NoticeProps) {
  return (
    <MessageBar intent={intent} layout="multiline" politeness="polite">
      <MessageBarBody>{children}</MessageBarBody>
      {actions !== undefined && <MessageBarActions>{actions}</MessageBarActions>}
    </MessageBar>
  );
}
