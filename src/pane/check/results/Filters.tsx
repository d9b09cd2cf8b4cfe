import { Button, Input, makeStyles, Select } from "@fluentui/react-components";
import { useEffect, useRef } from "react";
import { useAnnounce } from "../../kit/announce";
import { counted } from "../report";
import { ruleInWords } from "../ruleWords";
import type { Findings } from "./useFindings";

const useStyles = makeStyles({
  row: { display: "flex", flexWrap: "wrap", gap: "6px" },
  text: { flex: "1 1 120px", minWidth: 0 },
  rule: { flex: "0 1 110px", minWidth: 0 },
});

/** Narrows the list by cylinder or words, and by rule. */
export function Filters({ findings }: { findings: Findings }) {
  const styles = useStyles();
  const announce = useAnnounce();
  const { filter, matching, rules } = findings;
  const filtered = filter.text !== "" || filter.rule !== "" || filter.severities.length > 0;
  const first = useRef(true);
  useEffect(() => {
    if (!first.current) announce(`${counted(matching.length, "finding")} shown.`);
    first.current = false;
  }, [matching.length, announce]);
  return (
    <div role="search" aria-label="Findings" className={styles.row}>
      <Input
        size="small"
        type="search"
        className={styles.text}
        aria-label="Cylinder or words"
        placeholder="Cylinder or words"
        value={filter.text}
        onChange={(_, { value }) => {
          findings.change({ text: value });
        }}
      />
      <Select
        size="small"
        className={styles.rule}
        aria-label="Rule"
        value={filter.rule}
        onChange={(_, { value }) => {
          findings.change({ rule: value });
        }}
      >
        <option value="">All rules</option>
        {rules.map(({ rule, count }) => (
          <option key={rule} value={rule}>
            {ruleInWords(rule)} ({count})
          </option>
        ))}
      </Select>
      {filtered && (
        <Button size="small" onClick={findings.clear}>
          Clear
        </Button>
      )}
    </div>
  );
}
