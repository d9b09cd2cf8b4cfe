import { makeStyles, tokens } from "@fluentui/react-components";
import type { Acceptance } from "../../../audit/judge/acceptance";
import { dayInWords } from "./dayInWords";

const useStyles = makeStyles({
  note: {
    display: "block",
    marginTop: "3px",
    paddingLeft: "8px",
    borderLeft: `2px solid ${tokens.colorNeutralStroke1}`,
  },
});

/** Why the shop lets a finding stand, and who says so. */
export function AcceptedNote({ acceptance: { reason, by, on } }: { acceptance: Acceptance }) {
  return (
    <span className={useStyles().note}>
      Accepted by {by} on {dayInWords(on)}: {reason}
    </span>
  );
}
