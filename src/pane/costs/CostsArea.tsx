import { Button, makeStyles, Select, tokens } from "@fluentui/react-components";
import { useEffect, useId, useRef, type RefObject } from "react";
import type { Workbook } from "../../workbook/workbook";
import { count } from "../check/report";
import { useJump } from "../check/useJump";
import { WorkUnderWay } from "../check/WorkUnderWay";
import { useAnnounce } from "../kit/announce";
import { Notice, ProblemNote } from "../kit/ProblemNote";
import type { Shop } from "../shop/useShop";
import { CostResults } from "./CostResults";
import { CostStatusBar } from "./CostStatusBar";
import { PriceListNeeded } from "./PriceListNeeded";
import { useCosts, type Costs } from "./useCosts";
import { WriteSheets } from "./WriteSheets";

interface CostsAreaProps {
  readonly workbook: Workbook;
  readonly shop: Shop;
}

const useStyles = makeStyles({
  area: { padding: "12px", display: "flex", flexDirection: "column", gap: "12px", flexGrow: 1 },
  text: { margin: 0 },
  caution: {
    margin: 0,
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
    color: tokens.colorNeutralForeground3,
  },
  period: { display: "grid", gridTemplateColumns: "auto 1fr", alignItems: "center", gap: "8px" },
});

/** Fill costs: gas that went in, what it cost, what was charged, and what could not be costed. */
export function CostsArea({ workbook, shop }: CostsAreaProps) {
  const styles = useStyles();
  const costs = useCosts(workbook, shop);
  const jump = useJump(workbook);
  const button = useRef<HTMLButtonElement>(null);
  const { answer, busy, problem, written, unreachable } = costs;
  const { units } = shop.settings;
  useSpokenState(costs);
  useFocusBack(busy !== undefined, button);
  const hasFills = answer !== undefined && answer.fills > 0;
  return (
    <>
      <div className={styles.area}>
        {!answer && (
          <p className={styles.text}>
            What fills cost and earn: the gas that really went in, from the log; its price, the
            compressor&apos;s hours and the time, from a price list in this workbook.
          </p>
        )}
        {problem && <ProblemNote problem={problem} />}
        {unreachable.length > 0 && <Notice>Not read: {unreachable.join(" ")}</Notice>}
        {busy ? (
          <WorkUnderWay busy={busy} onCancel={costs.cancel} />
        ) : (
          (!costs.isLive || !answer) && (
            <Button ref={button} appearance="primary" onClick={costs.run}>
              {answer ? "Work it out again" : "Work out the costs"}
            </Button>
          )
        )}
        {answer && !hasFills && (
          <Notice>
            No fill was found in this workbook
            {costs.view.month === undefined ? "" : ` in ${costs.view.month}`}. Check under “Check the log” how
            its sheets are read.
          </Notice>
        )}
        {answer && answer.priceSheet === undefined && <PriceListNeeded costs={costs} />}
        {answer?.priceSheet !== undefined && units !== undefined && hasFills && (
          <>
            <Period costs={costs} />
            <CostResults costs={costs} answer={answer} units={units} jump={jump} />
            <WriteSheets costs={costs} />
          </>
        )}
        {written && (
          <Notice intent="success">
            {written.what === "cost sheets"
              ? `Written as new sheets: ${written.names.join(", ")}.`
              : `“${written.names.join()}” is a new sheet. Fill in what applies there.`}
          </Notice>
        )}
        <p className={styles.caution}>
          Costs go by what was written in the log. They say nothing of the gas: analyse every cylinder.
        </p>
      </div>
      {hasFills && <CostStatusBar answer={answer} jump={jump} />}
    </>
  );
}

function Period({ costs }: { costs: Costs }) {
  const styles = useStyles();
  const id = useId();
  return (
    <div className={styles.period}>
      <label htmlFor={id}>Fills of</label>
      <Select
        id={id}
        value={costs.view.month ?? ""}
        onChange={(_, { value }) => {
          costs.look({ month: value === "" ? undefined : value });
        }}
      >
        <option value="">the whole log</option>
        {(costs.answer?.months ?? []).map((month) => (
          <option key={month} value={month}>
            {month}
          </option>
        ))}
      </Select>
    </div>
  );
}

/** Tells a screen reader what came of it. */
function useSpokenState({ answer, written }: Costs): void {
  const announce = useAnnounce();
  const told = useRef({ answer, written });
  useEffect(() => {
    if (answer && answer !== told.current.answer)
      announce(
        answer.priceSheet === undefined
          ? "No price list was found in this workbook."
          : `${count(answer.sum.fills)} fills costed, ${count(answer.notCosted)} not costed.`,
      );
    if (written && written !== told.current.written) announce(`Written: ${written.names.join(", ")}.`);
    told.current = { answer, written };
  }, [answer, written, announce]);
}

/** The button gives way to Cancel: whoever pressed either finds the focus on the button again. */
function useFocusBack(busy: boolean, button: RefObject<HTMLButtonElement>): void {
  const was = useRef(busy);
  useEffect(() => {
    if (was.current && !busy && document.activeElement === document.body) button.current?.focus();
    was.current = busy;
  }, [busy, button]);
}
