import { Button, Field, Input, makeStyles, Select, tokens } from "@fluentui/react-components";
import { useState, type FormEvent } from "react";
import type { AirTest } from "../../audit/shop/shop";
import { useAnnounce } from "../kit/announce";
import { Disclosure } from "../kit/Disclosure";
import { TextButton } from "../kit/TextButton";
import type { Shop } from "./useShop";

const useStyles = makeStyles({
  form: { display: "flex", flexDirection: "column", gap: "8px", margin: "2px 0 8px 22px" },
  list: { listStyleType: "none", margin: "0 0 6px 22px", padding: 0, fontSize: tokens.fontSizeBase200 },
  row: { display: "flex", justifyContent: "space-between", gap: "8px", padding: "2px 0" },
  remove: { flexShrink: 0, alignSelf: "flex-start" },
  text: { margin: "4px 0 6px 22px", fontSize: tokens.fontSizeBase200, lineHeight: tokens.lineHeightBase200 },
  button: { alignSelf: "flex-start" },
});

const BLANK = { date: "", passed: "passed", source: "" };

/** The air tests on record: fills long after the last one, and all since a bad one, are found by them. */
export function AirTests({ shop }: { shop: Shop }) {
  const styles = useStyles();
  const announce = useAnnounce();
  const [entry, setEntry] = useState(BLANK);
  const [asked, setAsked] = useState(false);
  const { airTests = [] } = shop.settings;
  const keep = (next: readonly AirTest[]) => {
    shop.change((settings) => ({ ...settings, airTests: [...next] }));
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    setAsked(entry.date === "");
    if (entry.date === "") return;
    const source = entry.source.trim();
    const test: AirTest = {
      date: entry.date,
      passed: entry.passed === "passed",
      ...(source !== "" && { source }),
    };
    keep([...airTests, test].sort((one, other) => one.date.localeCompare(other.date)));
    setEntry(BLANK);
    announce("Kept. Check the log again with this test.");
  };
  return (
    <Disclosure
      title="Air tests"
      heading="h3"
      hint={airTests.length > 0 ? `${airTests.length} on record` : "None on record"}
    >
      <p className={styles.text}>
        A fill is judged by the last test before it. Without tests here, none is: unknown is no pass.
      </p>
      <ul className={styles.list}>
        {airTests.map((test, at) => (
          <li key={at} className={styles.row}>
            <span>
              {test.date}: {test.passed ? "passed" : "failed"}
              {test.source === undefined ? "" : `, ${test.source}`}
            </span>
            <TextButton
              className={styles.remove}
              aria-label={`Remove the test of ${test.date}`}
              onClick={() => {
                keep(airTests.filter((other) => other !== test));
                announce("Removed.");
              }}
            >
              Remove
            </TextButton>
          </li>
        ))}
      </ul>
      <form className={styles.form} onSubmit={submit} noValidate>
        <Field
          label="Day of the sample"
          size="small"
          validationMessage={asked ? "Say on which day the sample was taken." : undefined}
        >
          <Input
            type="date"
            size="small"
            value={entry.date}
            onChange={(_, { value }) => {
              setEntry({ ...entry, date: value });
            }}
          />
        </Field>
        <Field label="Result" size="small">
          <Select
            size="small"
            value={entry.passed}
            onChange={(_, { value }) => {
              setEntry({ ...entry, passed: value });
            }}
          >
            <option value="passed">passed</option>
            <option value="failed">failed</option>
          </Select>
        </Field>
        <Field
          label="Bank or compressor, as the log names it"
          hint="Blank: all the air of the shop"
          size="small"
        >
          <Input
            size="small"
            value={entry.source}
            onChange={(_, { value }) => {
              setEntry({ ...entry, source: value });
            }}
          />
        </Field>
        <Button type="submit" size="small" className={styles.button}>
          Add the test
        </Button>
      </form>
    </Disclosure>
  );
}
