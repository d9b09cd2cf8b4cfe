import { makeStyles, tokens } from "@fluentui/react-components";
import { useRef } from "react";
import type { Acceptance } from "../../../audit/judge/acceptance";
import { ruleInWords } from "../../../audit/rules/ruleInWords";
import { useAnnounce } from "../../kit/announce";
import { Disclosure } from "../../kit/Disclosure";
import { SeverityMark } from "../../kit/SeverityMark";
import { TextButton } from "../../kit/TextButton";
import { useVisuallyHidden } from "../../kit/visuallyHidden";
import { count } from "../report";
import { AcceptedNote } from "./AcceptedNote";
import { dayInWords } from "./dayInWords";

interface NoLongerFoundProps {
  readonly acceptances: readonly Acceptance[];
  readonly onRemove: (acceptance: Acceptance) => void;
}

const useStyles = makeStyles({
  title: { display: "inline-flex", alignItems: "center", gap: "6px" },
  quiet: { margin: 0, fontSize: tokens.fontSizeBase200, color: tokens.colorNeutralForeground3 },
  list: {
    listStyleType: "none",
    margin: "4px 0",
    padding: 0,
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
  },
  item: { padding: "4px 0", borderTop: `1px solid ${tokens.colorNeutralStroke3}` },
  about: { display: "block", color: tokens.colorNeutralForeground3 },
});

/** What the shop has accepted and this check does not find: kept until somebody removes it. */
export function NoLongerFound({ acceptances, onRemove }: NoLongerFoundProps) {
  const styles = useStyles();
  const hidden = useVisuallyHidden();
  const announce = useAnnounce();
  const list = useRef<HTMLUListElement>(null);
  if (acceptances.length === 0) return null;
  return (
    <Disclosure
      heading="h3"
      title={
        <span className={styles.title}>
          <SeverityMark mark="accepted" />
          Accepted, no longer found: {count(acceptances.length)}
        </span>
      }
    >
      <p className={styles.quiet}>
        Mended, sorted to another row, judged by another rule or on a sheet left out. Should one be found
        again as it was, it stands accepted again, unless you remove it.
      </p>
      <ul className={styles.list} ref={list} tabIndex={-1} aria-label="Accepted, no longer found">
        {acceptances.map((acceptance) => {
          const { rule, serial, fillDate, sheet, cell } = acceptance;
          const about = [serial, dayInWords(fillDate), `${sheet}!${cell}`].filter(Boolean).join(" · ");
          return (
            <li key={`${rule} ${about}`} className={styles.item}>
              {ruleInWords(rule)}
              <AcceptedNote acceptance={acceptance} />
              <span className={styles.about}>{about}</span>
              <TextButton
                onClick={() => {
                  list.current?.focus();
                  onRemove(acceptance);
                  announce("Removed.");
                }}
              >
                Remove <span className={hidden}>the acceptance of {about}</span>
              </TextButton>
            </li>
          );
        })}
      </ul>
    </Disclosure>
  );
}
