import { Button, Field, Input, makeStyles, Select, tokens } from "@fluentui/react-components";
import { useState, type FormEvent } from "react";
import type { GasSource } from "../../audit/shop/shop";
import { nameMix } from "../../gas/nameMix";
import { readMix } from "../../gas/readMix";
import { Refusal } from "../../gas/refusal";
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

const BLANK = { name: "", compatible: "", mix: "" };
const COMPATIBLE: Readonly<Record<string, boolean | undefined>> = { yes: true, no: false };

/** Banks and compressors: whether their gas may meet oxygen, and what they hold. */
export function GasSources({ shop }: { shop: Shop }) {
  const styles = useStyles();
  const announce = useAnnounce();
  const [entry, setEntry] = useState(BLANK);
  const [problem, setProblem] = useState<{ readonly name?: string; readonly mix?: string }>({});
  const { sources = [] } = shop.settings;
  const keep = (next: readonly GasSource[]) => {
    shop.change((settings) => ({ ...settings, sources: [...next] }));
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const name = entry.name.trim();
    if (name === "") {
      setProblem({ name: "Write the name as it stands in the log." });
      return;
    }
    try {
      const oxygenCompatible = COMPATIBLE[entry.compatible];
      const source: GasSource = {
        name,
        ...(oxygenCompatible !== undefined && { oxygenCompatible }),
        ...(entry.mix.trim() !== "" && { mix: readMix(entry.mix) }),
      };
      keep([...sources.filter((other) => other.name.toLowerCase() !== name.toLowerCase()), source]);
      setEntry(BLANK);
      setProblem({});
      announce("Kept. Check the log again with this source.");
    } catch (thrown) {
      if (!(thrown instanceof Refusal)) throw thrown;
      setProblem({ mix: thrown.message });
    }
  };
  return (
    <Disclosure
      title="Banks and compressors"
      heading="h3"
      hint={sources.length > 0 ? `${sources.length} told of` : "None told of"}
    >
      <p className={styles.text}>
        By them it is judged whether oily air went into an oxygen-clean cylinder, and what a fill must have
        made.
      </p>
      <ul className={styles.list}>
        {sources.map((source) => (
          <li key={source.name} className={styles.row}>
            <span>
              {source.name}: {inWords(source)}
            </span>
            <TextButton
              className={styles.remove}
              aria-label={`Remove ${source.name}`}
              onClick={() => {
                keep(sources.filter((other) => other !== source));
                announce("Removed.");
              }}
            >
              Remove
            </TextButton>
          </li>
        ))}
      </ul>
      <form className={styles.form} onSubmit={submit} noValidate>
        <Field label="Name, as the log has it" size="small" validationMessage={problem.name}>
          <Input
            size="small"
            value={entry.name}
            onChange={(_, { value }) => {
              setEntry({ ...entry, name: value });
            }}
          />
        </Field>
        <Field label="Its gas may meet oxygen" hint="Oil proven to be at most 0.1 mg/m³" size="small">
          <Select
            size="small"
            value={entry.compatible}
            onChange={(_, { value }) => {
              setEntry({ ...entry, compatible: value });
            }}
          >
            <option value="">not known</option>
            <option value="yes">yes</option>
            <option value="no">no</option>
          </Select>
        </Field>
        <Field
          label="It holds"
          hint="Air, EAN32; blank where it changes"
          size="small"
          validationMessage={problem.mix}
        >
          <Input
            size="small"
            value={entry.mix}
            onChange={(_, { value }) => {
              setEntry({ ...entry, mix: value });
            }}
          />
        </Field>
        <Button type="submit" size="small" className={styles.button}>
          Add the source
        </Button>
      </form>
    </Disclosure>
  );
}

function inWords({ oxygenCompatible, mix }: GasSource): string {
  const holds = mix === undefined ? "" : `, holds ${nameMix(mix)}`;
  if (oxygenCompatible === undefined) return `not known whether it may meet oxygen${holds}`;
  return `${oxygenCompatible ? "may" : "must not"} meet oxygen${holds}`;
}
