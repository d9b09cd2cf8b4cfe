import { makeStyles, mergeClasses, tokens } from "@fluentui/react-components";
import { SEVERITIES, type Severity } from "../../../audit/finding";
import { SEVERITY_WORDS, SeverityMark } from "../../kit/SeverityMark";
import { count } from "../report";
import type { Findings } from "./useFindings";

const useStyles = makeStyles({
  tiles: { display: "grid", gridTemplateColumns: "repeat(4, 1fr)", gap: "6px" },
  tile: {
    display: "flex",
    flexDirection: "column",
    alignItems: "center",
    padding: "6px 2px",
    font: "inherit",
    color: "inherit",
    backgroundColor: tokens.colorNeutralBackground1,
    border: `1px solid ${tokens.colorNeutralStroke2}`,
    borderRadius: tokens.borderRadiusMedium,
    cursor: "pointer",
    ":hover": { backgroundColor: tokens.colorNeutralBackground1Hover },
    ":focus-visible": { outline: `2px solid ${tokens.colorStrokeFocus2}`, outlineOffset: "1px" },
  },
  pressed: {
    border: `1px solid ${tokens.colorCompoundBrandStroke}`,
    boxShadow: `inset 0 0 0 1px ${tokens.colorCompoundBrandStroke}`,
    "@media (forced-colors: active)": { outline: "2px solid Highlight", outlineOffset: "-3px" },
  },
  number: {
    fontSize: tokens.fontSizeBase500,
    lineHeight: tokens.lineHeightBase500,
    fontWeight: tokens.fontWeightSemibold,
  },
  word: { display: "flex", alignItems: "center", gap: "4px", fontSize: tokens.fontSizeBase200 },
});

/** How many of each severity; a press shows only that one. */
export function Summary({ findings }: { findings: Findings }) {
  const styles = useStyles();
  const { severities } = findings.filter;
  const toggle = (severity: Severity) => {
    findings.change({
      severities: severities.includes(severity)
        ? severities.filter((other) => other !== severity)
        : [...severities, severity],
    });
  };
  return (
    <div role="group" aria-label="Findings by severity; press to show only these" className={styles.tiles}>
      {SEVERITIES.map((severity) => (
        <button
          key={severity}
          type="button"
          className={mergeClasses(styles.tile, severities.includes(severity) && styles.pressed)}
          aria-pressed={severities.includes(severity)}
          onClick={() => {
            toggle(severity);
          }}
        >
          <span className={styles.number}>{count(findings.counts[severity])}</span>
          <span className={styles.word}>
            <SeverityMark mark={severity} />
            {SEVERITY_WORDS[severity]}
          </span>
        </button>
      ))}
    </div>
  );
}
