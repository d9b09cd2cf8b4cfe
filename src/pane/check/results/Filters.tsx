import { Button, Field, Input, makeStyles, Select } from "@fluentui/react-components";
import { useEffect, useId, useMemo, useRef, useState } from "react";
import { useAnnounce } from "../../kit/announce";
import { counted } from "../report";
import { ruleInWords } from "../../../audit/rules/ruleInWords";
import { isFiltered, narrowedBy } from "./filter";
import { PeriodFilter } from "./PeriodFilter";
import { choicesIn, type Choice, type Findings } from "./useFindings";

/** Enough to pick from; the field takes any serial, or a part of one. */
const CYLINDERS_OFFERED = 200;

const useStyles = makeStyles({
  row: { display: "flex", flexWrap: "wrap", gap: "6px" },
  text: { flex: "1 1 110px", minWidth: 0 },
  narrow: { flex: "1 0 100%", display: "grid", gridTemplateColumns: "1fr 1fr", gap: "6px" },
  control: { minWidth: 0, "& select, & input": { minWidth: 0, width: "100%" } },
  wide: { gridColumn: "1 / -1", minWidth: 0 },
});

/** Narrows the list: by words at once; by rule, cylinder, person and period on request. */
export function Filters({ findings }: { findings: Findings }) {
  const styles = useStyles();
  const announce = useAnnounce();
  const id = useId();
  const [open, setOpen] = useState(false);
  const { filter, matching, change } = findings;
  const first = useRef(true);
  useEffect(() => {
    if (!first.current) announce(`${counted(matching.length, "finding")} shown.`);
    first.current = false;
  }, [matching.length, announce]);
  const narrowed = narrowedBy(filter);
  return (
    <div role="search" aria-label="Findings" className={styles.row}>
      <Input
        size="small"
        type="search"
        className={styles.text}
        aria-label="Words to find"
        placeholder="Find words"
        value={filter.text}
        onChange={(_, { value }) => {
          change({ text: value });
        }}
      />
      <Button
        size="small"
        aria-expanded={open}
        aria-controls={open ? id : undefined}
        onClick={() => {
          setOpen(!open);
        }}
      >
        {narrowed === 0 ? "Filter" : `Filter (${narrowed})`}
      </Button>
      {isFiltered(filter) && (
        <Button size="small" onClick={findings.clear}>
          Clear
        </Button>
      )}
      {open && (
        <div id={id} className={styles.narrow}>
          <Narrowing findings={findings} />
        </div>
      )}
    </div>
  );
}

/** Rule, cylinder, person and period: what there is to choose is counted only where somebody chooses. */
function Narrowing({ findings }: { findings: Findings }) {
  const styles = useStyles();
  const id = useId();
  const { all, filter, change } = findings;
  const choices = useMemo(() => choicesIn(all), [all]);
  return (
    <>
      <Field label="Rule" size="small" className={styles.wide}>
        <Select
          size="small"
          value={filter.rule}
          onChange={(_, { value }) => {
            change({ rule: value });
          }}
        >
          <option value="">All rules</option>
          {choices.rules.map((rule) => (
            <option key={rule.value} value={rule.value}>
              {ruleInWords(rule.value)} ({rule.count})
            </option>
          ))}
        </Select>
      </Field>
      <Field label="Cylinder" size="small" className={styles.control}>
        <Input
          size="small"
          list={`${id}-cylinders`}
          value={filter.cylinder}
          onChange={(_, { value }) => {
            change({ cylinder: value });
          }}
        />
      </Field>
      <datalist id={`${id}-cylinders`}>
        {choices.cylinders.slice(0, CYLINDERS_OFFERED).map(({ value }) => (
          <option key={value} value={value} />
        ))}
      </datalist>
      <Field label="Filled by" size="small" className={styles.control}>
        <Select
          size="small"
          value={filter.filledBy}
          onChange={(_, { value }) => {
            change({ filledBy: value });
          }}
        >
          <option value="">Everybody</option>
          {choices.filledBy.map(asOption)}
        </Select>
      </Field>
      <PeriodFilter findings={findings} months={choices.months} className={styles.wide} />
    </>
  );
}

function asOption({ value, count }: Choice) {
  return (
    <option key={value} value={value}>
      {value} ({count})
    </option>
  );
}
