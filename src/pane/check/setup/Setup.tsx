import { makeStyles, tokens } from "@fluentui/react-components";
import { useState } from "react";
import { Disclosure } from "../../kit/Disclosure";
import { TextButton } from "../../kit/TextButton";
import { counted, isChosen, type LogReading, type SheetReading } from "../report";
import type { Check } from "../useCheck";
import { OpenQuestions } from "./OpenQuestions";
import { SheetEntry } from "./SheetEntry";

interface SetupProps {
  readonly check: Check;
  readonly reading: LogReading;
  /** Takes the focus when the last question is answered. */
  readonly onAllAnswered: () => void;
}

const useStyles = makeStyles({
  section: { display: "flex", flexDirection: "column", gap: "8px" },
  list: {
    listStyleType: "none",
    margin: 0,
    padding: 0,
    backgroundColor: tokens.colorNeutralBackground1,
    border: `1px solid ${tokens.colorNeutralStroke2}`,
    borderRadius: tokens.borderRadiusMedium,
  },
  again: { marginTop: "6px", fontSize: tokens.fontSizeBase200 },
  others: { margin: "4px 0 0" },
});

/** Which sheets are checked, what their columns were taken for, and what is still to be asked. */
export function Setup({ check, reading, onAllAnswered }: SetupProps) {
  const styles = useStyles();
  const [toggled, setToggled] = useState<boolean>();
  const choices = check.shop.settings.sheets;
  const chosen = reading.sheets.filter((sheet) => isChosen(sheet, choices));
  const likely = reading.sheets.filter((sheet) => sheet.kind !== "neither" || isChosen(sheet, choices));
  const others = reading.sheets.filter((sheet) => !likely.includes(sheet));
  const entries = (sheets: typeof reading.sheets) => (
    <ul className={styles.list}>
      {sheets.map((sheet) => (
        <SheetEntry key={sheet.name} sheet={sheet} chosen={chosen.includes(sheet)} shop={check.shop} />
      ))}
    </ul>
  );
  return (
    <section className={styles.section} aria-label="Sheets and columns">
      <Disclosure
        title="Sheets and columns"
        heading="h2"
        hint={inWords(chosen)}
        open={toggled ?? chosen.every(({ rows }) => rows.fills === 0)}
        onToggle={setToggled}
      >
        {likely.length > 0 && entries(likely)}
        {check.unreachable.map(({ name, sentence }) => (
          <p key={name} className={styles.others}>
            {name}: {sentence}
          </p>
        ))}
        {others.length > 0 && (
          <Disclosure
            title={`${counted(others.length, "other sheet")}, no log in ${others.length === 1 ? "it" : "them"}`}
          >
            {entries(others)}
          </Disclosure>
        )}
        <TextButton className={styles.again} onClick={check.again}>
          Look through the workbook again
        </TextButton>
      </Disclosure>
      <OpenQuestions sheets={chosen} shop={check.shop} onAllAnswered={onAllAnswered} />
    </section>
  );
}

const NAMED = 3;

function inWords(sheets: readonly SheetReading[]): string {
  if (sheets.length === 0) return "No sheet is ticked";
  const names = sheets
    .slice(0, NAMED)
    .map(({ name }) => name)
    .join(", ");
  return sheets.length > NAMED ? `${names} and ${sheets.length - NAMED} more` : names;
}
