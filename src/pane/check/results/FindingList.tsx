import { makeStyles, tokens } from "@fluentui/react-components";
import { useCallback, useEffect, useId, useRef, useState, type KeyboardEvent } from "react";
import { SEVERITY_WORDS, SeverityMark } from "../../kit/SeverityMark";
import { useVisuallyHidden } from "../../kit/visuallyHidden";
import type { Jump } from "../useJump";
import { FindingEntry } from "./FindingEntry";
import type { Group } from "./filter";
import type { Accepted } from "./useAccepted";
import type { ShownFinding } from "./filter";
import { GROUPS, type Findings } from "./useFindings";

interface FindingListProps {
  readonly findings: Findings;
  readonly accepted: Accepted;
  readonly jump: Jump;
}

/** What each severity asks of the reader. */
const MEANINGS: Readonly<Record<Group, string>> = {
  stop: "should not have been filled, or must not go out",
  breach: "a rule was broken",
  warn: "a gap in practice, or likely a typing error",
  note: "good to know",
  accepted: "looked into by the shop, with its reason",
};

const useStyles = makeStyles({
  title: {
    display: "flex",
    alignItems: "center",
    gap: "6px",
    margin: "6px 0 4px",
    fontSize: tokens.fontSizeBase300,
    fontWeight: tokens.fontWeightSemibold,
  },
  word: { flexShrink: 0 },
  meaning: {
    fontSize: tokens.fontSizeBase200,
    fontWeight: tokens.fontWeightRegular,
    color: tokens.colorNeutralForeground3,
  },
  list: {
    listStyleType: "none",
    margin: 0,
    padding: 0,
    backgroundColor: tokens.colorNeutralBackground1,
    border: `1px solid ${tokens.colorNeutralStroke2}`,
    borderRadius: tokens.borderRadiusMedium,
    overflow: "hidden",
  },
});

/** The findings, grouped by severity, what was accepted last: one tab stop, arrows from there. */
export function FindingList({ findings, accepted, jump }: FindingListProps) {
  const styles = useStyles();
  const hidden = useVisuallyHidden();
  const id = useId();
  const { shown, page, pages, setPage } = findings;
  const [active, setActive] = useState(0);
  const [current, setCurrent] = useState<number>();
  const box = useRef<HTMLDivElement>(null);
  const focusNext = useRef<"first" | "last">();
  /** Nothing tells of the focus of what is taken away, so it is known from before. */
  const hadFocus = useRef(false);

  const focus = (at: number, part: string) => {
    setActive(at);
    box.current?.querySelector<HTMLElement>(`[data-at="${at}"] [data-part="${part}"]`)?.focus();
  };

  const turnTo = (next: number, end: "first" | "last") => {
    focusNext.current = end;
    setPage(next);
  };

  // Another page, or another filter: start at its top, or at its bottom when coming from below. Where the finding
  // that had the focus has gone, as it was accepted, the next one takes its place.
  useEffect(() => {
    const wentAway = hadFocus.current && document.activeElement === document.body && shown.length > 0;
    const at = focusNext.current === "last" ? shown.length - 1 : 0;
    if (focusNext.current !== undefined) focus(at, "finding");
    else if (wentAway) focus(Math.min(active, shown.length - 1), "finding");
    else setActive(at);
    focusNext.current = undefined;
  }, [shown]);

  const onKeyDown = (event: KeyboardEvent<HTMLElement>) => {
    const from = event.target as HTMLElement;
    const at = Number(from.closest<HTMLElement>("[data-at]")?.dataset.at);
    if (from.dataset.part === undefined || event.altKey || event.ctrlKey || event.metaKey) return;
    const step = STEPS[event.key];
    const last = shown.length - 1;
    if (step !== undefined && step > 0 && at === last && page < pages - 1) turnTo(page + 1, "first");
    else if (step !== undefined && step < 0 && at === 0 && page > 0) turnTo(page - 1, "last");
    else if (step !== undefined) focus(Math.min(Math.max(at + step, 0), last), "finding");
    else if (event.key === "ArrowRight") focus(at, "why");
    else if (event.key === "ArrowLeft") focus(at, "finding");
    else return;
    event.preventDefault();
  };

  const onJump = useCallback(
    ({ finding, held, key }: ShownFinding) => {
      setCurrent(key);
      jump.to(finding.cell, `finding ${key}`, held);
    },
    [jump.to],
  );

  return (
    <div
      ref={box}
      role="group"
      aria-label="List of findings"
      aria-describedby={id}
      onKeyDown={onKeyDown}
      onFocus={() => {
        hadFocus.current = true;
      }}
      onBlur={() => {
        hadFocus.current = false;
      }}
    >
      <p id={id} className={hidden}>
        Up and down arrows move between findings, Enter goes to the cell, the right arrow goes to why.
      </p>
      {GROUPS.map((group) => {
        const first = shown.findIndex((entry) => entry.group === group);
        if (first < 0) return null;
        return (
          <section key={group}>
            <h4 className={styles.title}>
              <SeverityMark mark={group} />
              <span className={styles.word}>{SEVERITY_WORDS[group]}</span>{" "}
              <span className={styles.meaning}>{MEANINGS[group]}</span>
            </h4>
            <ul className={styles.list}>
              {shown
                .filter((entry) => entry.group === group)
                .map((entry, offset) => (
                  <FindingEntry
                    key={entry.key}
                    entry={entry}
                    at={first + offset}
                    active={active === first + offset}
                    current={current === entry.key}
                    note={jump.note?.from === `finding ${entry.key}` ? jump.note.sentence : undefined}
                    accepted={accepted}
                    onActive={setActive}
                    onJump={onJump}
                  />
                ))}
            </ul>
          </section>
        );
      })}
    </div>
  );
}

const STEPS: Readonly<Record<string, number>> = {
  ArrowDown: 1,
  ArrowUp: -1,
  PageDown: 10,
  PageUp: -10,
  Home: -Infinity,
  End: Infinity,
};
