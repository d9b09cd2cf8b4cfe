import { Button, Field, Select } from "@fluentui/react-components";
import { useState } from "react";
import { settingsFor } from "../../../../audit/shop/limits";
import { shopOf, type HouseOverrides } from "../../../../audit/shop/shop";
import { COUNTRIES, countryRules } from "../../../../cylinders/countryRules";
import type { Tried } from "../../../../session/questions/rehearsal";
import { ProblemNote } from "../../../kit/ProblemNote";
import { useAnswer } from "../../../session";
import { FigureField } from "../../../shop/FigureField";
import { WorkUnderWay } from "../../WorkUnderWay";
import type { FurtherProps } from "./furtherProps";
import { SideBySide } from "./SideBySide";
import { useFormStyles } from "./useFormStyles";

/** The same log under another country's rules, or stricter limits of the house: tried out, and nothing kept. */
export function RehearsalForm({ report, check, jump }: FurtherProps) {
  const styles = useFormStyles();
  const [country, setCountry] = useState(report.country);
  const [tried, setTried] = useState<HouseOverrides>({});
  const [chosen, setChosen] = useState<readonly string[]>([]);
  const rules = countryRules(country);
  const settings = settingsFor(rules);
  const usual = shopOf(rules);
  const own = country === report.country ? (check.shop.settings.house ?? {}) : {};
  const [wanted, setWanted] = useState<Tried>();
  const { answer, busy, problem, cancel } = useAnswer("rehearsal", wanted ?? "nothing");
  const isSame = country === report.country && Object.keys(tried).length === 0;
  return (
    <>
      <div className={styles.form}>
        <Field label="Rules to try" size="small">
          <Select
            size="small"
            value={country}
            onChange={(_, { value }) => {
              setCountry(value);
              setTried({});
              setChosen([]);
            }}
          >
            {COUNTRIES.map(({ code, name }) => (
              <option key={code} value={code}>
                {code === report.country ? `${name}, as now` : name}
              </option>
            ))}
          </Select>
        </Field>
        {settings
          .filter(({ id }) => chosen.includes(id))
          .map((setting) => (
            <FigureField
              key={`${country} ${setting.id}`}
              setting={setting}
              usual={own[setting.id] ?? setting.of(usual)}
              own={tried[setting.id]}
              onChange={(value) => {
                const others = Object.entries(tried).filter(([id]) => id !== setting.id);
                const figure = value === undefined ? [] : [[setting.id, value] as const];
                setTried(Object.fromEntries([...others, ...figure]));
              }}
            />
          ))}
        <Field label="A limit to try" size="small">
          <Select
            size="small"
            value=""
            onChange={(_, { value }) => {
              if (value !== "") setChosen([...chosen, value]);
            }}
          >
            <option value="">Choose a limit</option>
            {[...new Set(settings.map(({ group }) => group))].map((group) => (
              <optgroup key={group} label={group}>
                {settings
                  .filter((setting) => setting.group === group && !chosen.includes(setting.id))
                  .map(({ id, name }) => (
                    <option key={id} value={id}>
                      {name}
                    </option>
                  ))}
              </optgroup>
            ))}
          </Select>
        </Field>
        <Button
          size="small"
          className={styles.button}
          disabledFocusable={isSame}
          onClick={() => {
            setWanted({ country, house: tried });
          }}
        >
          Compare
        </Button>
        {isSame && (
          <p className={styles.line}>Choose other rules, or a limit and its figure, to compare with now.</p>
        )}
        {busy && <WorkUnderWay busy={busy} onCancel={cancel} />}
        {problem && <ProblemNote problem={problem} />}
      </div>
      {answer && <SideBySide answer={answer} now={report.country} jump={jump} />}
    </>
  );
}
