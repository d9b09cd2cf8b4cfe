import { Button, Field, Input, mergeClasses } from "@fluentui/react-components";
import { useId, useState, type FormEvent } from "react";
import type { AirTest } from "../../../../audit/shop/shop";
import type { SuspectCylinder } from "../../../../audit/lists/suspectGas";
import { isSameSource } from "../../../../audit/shop/gasSources";
import { ProblemNote } from "../../../kit/ProblemNote";
import { TextButton } from "../../../kit/TextButton";
import type { BadAir, SuspectGas } from "../../../../session/questions/suspectGas";
import { useAnswer } from "../../../session";
import { counted } from "../../report";
import type { Check } from "../../useCheck";
import type { Jump } from "../../useJump";
import { WorkUnderWay } from "../../WorkUnderWay";
import { CylinderList, type ListedCylinder } from "../CylinderList";
import { dayInWords } from "../dayInWords";
import { useFormStyles } from "./useFormStyles";

interface BadAirTestProps {
  readonly check: Check;
  readonly jump: Jump;
}

/** After a bad air test: every cylinder filled between the good ones around it, with its share of suspect gas now. */
export function BadAirTest({ check, jump }: BadAirTestProps) {
  const styles = useFormStyles();
  const id = useId();
  const { airTests = [], sources = [] } = check.shop.settings;
  const known = airTests.findLast(({ passed }) => !passed);
  const [date, setDate] = useState(known?.date ?? "");
  const [source, setSource] = useState(known?.source ?? "");
  const [ownBefore, setOwnBefore] = useState<string>();
  const [ownAfter, setOwnAfter] = useState<string>();
  const [asked, setAsked] = useState(false);
  const onRecord = goodTests(source.trim(), airTests);
  const recordedBefore = date === "" ? undefined : onRecord.findLast((day) => day < date);
  const recordedAfter = date === "" ? undefined : onRecord.find((day) => day > date);
  const before = ownBefore ?? recordedBefore ?? "";
  const after = ownAfter ?? recordedAfter ?? "";
  const isInOrder = (before === "" || before < date) && (after === "" || after > date);
  const [wanted, setWanted] = useState<BadAir>();
  const { answer, busy, problem, cancel } = useAnswer("suspectGas", wanted ?? "nothing");

  const submit = (event: FormEvent) => {
    event.preventDefault();
    setAsked(true);
    if (date === "" || !isInOrder) return;
    const at = source.trim() === "" ? {} : { source: source.trim() };
    setWanted({
      failed: { date, passed: false, ...at },
      good: [before, after].filter(Boolean).map((day) => ({ date: day, passed: true, ...at })),
    });
  };
  return (
    <>
      <form className={styles.form} onSubmit={submit} noValidate>
        <DayField
          label="Day of the bad sample"
          day={date}
          problem={asked && date === "" ? "Say on which day the sample was taken." : undefined}
          onDay={setDate}
        />
        <Field
          label="Bank or compressor, as the log names it"
          hint="Blank: all the air of the shop"
          size="small"
        >
          <Input
            size="small"
            list={`${id}-sources`}
            value={source}
            onChange={(_, { value }) => {
              setSource(value);
            }}
          />
        </Field>
        <datalist id={`${id}-sources`}>
          {sources.map(({ name }) => (
            <option key={name} value={name} />
          ))}
        </datalist>
        <DayField
          label="Last good sample before it"
          day={before}
          hint={recordedBefore ? "As kept under Rules & shop" : "Blank: every fill before the bad one counts"}
          problem={asked && before !== "" && before >= date ? "It must lie before the bad one." : undefined}
          onDay={setOwnBefore}
        />
        <DayField
          label="First good sample after it"
          day={after}
          hint={recordedAfter ? "As kept under Rules & shop" : "Blank: every fill since the bad one counts"}
          problem={asked && after !== "" && after <= date ? "It must lie after the bad one." : undefined}
          onDay={setOwnAfter}
        />
        <Button type="submit" size="small" className={styles.button}>
          List the cylinders
        </Button>
        {busy && <WorkUnderWay busy={busy} onCancel={cancel} />}
        {problem && <ProblemNote problem={problem} />}
      </form>
      {answer && <Suspects answer={answer} jump={jump} check={check} />}
    </>
  );
}

interface DayFieldProps {
  readonly label: string;
  readonly day: string;
  readonly hint?: string;
  readonly problem: string | undefined;
  readonly onDay: (day: string) => void;
}

function DayField({ label, day, hint, problem, onDay }: DayFieldProps) {
  return (
    <Field label={label} hint={hint} size="small" validationMessage={problem}>
      <Input
        type="date"
        size="small"
        value={day}
        onChange={(_, { value }) => {
          onDay(value);
        }}
      />
    </Field>
  );
}

interface SuspectsProps extends BadAirTestProps {
  readonly answer: SuspectGas;
}

function Suspects({ answer: { failed, cylinders }, jump, check }: SuspectsProps) {
  const styles = useFormStyles();
  const { airTests = [] } = check.shop.settings;
  const isKept = airTests.some((test) => !test.passed && test.date === failed.date);
  const certain = cylinders.filter(({ share }) => share.least > 0).length;
  return (
    <section className={styles.answer} aria-label="Cylinders with suspect gas">
      <p className={styles.line}>
        {cylinders.length === 0
          ? `No fill of this log took air that the sample of ${dayInWords(failed.date)} makes suspect.`
          : `${counted(cylinders.length, "cylinder")} may hold suspect gas, ${certain} for certain. Call the owners, the largest share first: empty, have the cylinder looked at, fill anew.`}
      </p>
      {cylinders.length > 0 && (
        <CylinderList
          label={`Suspect gas, sample of ${failed.date}`}
          copied="call list"
          cylinders={cylinders.map(asListed)}
          jump={jump}
        />
      )}
      {!isKept && (
        <p className={mergeClasses(styles.text, styles.line)}>
          <TextButton
            onClick={() => {
              const next: AirTest[] = [...airTests, failed];
              next.sort((one, other) => one.date.localeCompare(other.date));
              check.shop.change((settings) => ({ ...settings, airTests: next }));
            }}
          >
            Keep this test under Rules & shop
          </TextButton>
          , and the check finds these fills too.
        </p>
      )}
    </section>
  );
}

function asListed({ serial, owner, suspectFills, share, lastFillDate }: SuspectCylinder): ListedCylinder {
  const [last] = suspectFills.slice(-1);
  const unsure = suspectFills.some(({ isCertain }) => !isCertain) ? " Day or source is not in the log." : "";
  return {
    serial,
    owner,
    mark: share.least > 0 ? "stop" : "not checked",
    says: `${shareInWords(share)} of what it was last filled with is suspect.${unsure}`,
    about: `${counted(suspectFills.length, "suspect fill")}, last filled ${lastFillDate === "" ? "on a day not known" : dayInWords(lastFillDate)}`,
    ...(last && { cell: { sheet: last.sheet, row: last.row, column: 0 } }),
  };
}

/** `83 %`, `up to 100 %`, `12 to 40 %`: never less than it may be. */
export function shareInWords({ least, most }: SuspectCylinder["share"]): string {
  const low = Math.floor(least * 100);
  const high = Math.ceil(most * 100 - 1e-9);
  if (high - low <= 1) return `${high} %`;
  return low === 0 ? `Up to ${high} %` : `${low} to ${high} %`;
}

/** The days of good samples of this source, and of all the air of the shop, the earliest first. */
function goodTests(source: string, tests: readonly AirTest[]): readonly string[] {
  return tests
    .filter(
      (test) =>
        test.passed && (test.source === undefined || (source !== "" && isSameSource(test.source, source))),
    )
    .map(({ date }) => date)
    .sort();
}
