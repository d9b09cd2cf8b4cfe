import { makeStyles, mergeClasses, tokens } from "@fluentui/react-components";
import { SEVERITY_WORDS, SeverityMark } from "../../kit/SeverityMark";
import { count } from "../report";
import type { Group } from "./filter";
import { GROUPS, type Findings } from "./useFindings";

const useStyles = makeStyles({
  tiles: { display: "grid", gridAutoFlow: "column", gridAutoColumns: "1fr", gap: "6px" },
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

/** How many of each severity, and how many were accepted; a press shows only those. */
export function Summary({ findings }: { findings: Findings }) {
  const styles = useStyles();
  const { groups } = findings.filter;
  const toggle = (group: Group) => {
    findings.change({
      groups: groups.includes(group) ? groups.filter((other) => other !== group) : [...groups, group],
    });
  };
  return (
    <div role="group" aria-label="Findings by severity; press to show only these" className={styles.tiles}>
      {GROUPS.filter((group) => group !== "accepted" || findings.counts.accepted > 0).map((group) => (
        <button
          key={group}
          type="button"
          className={mergeClasses(styles.tile, groups.includes(group) && styles.pressed)}
          aria-pressed={groups.includes(group)}
          onClick={() => {
            toggle(group);
          }}
        >
          <span className={styles.number}>{count(findings.counts[group])}</span>
          <span className={styles.word}>
            <SeverityMark mark={group} />
            {SEVERITY_WORDS[group]}
          </span>
        </button>
      ))}
    </div>
  );
}
