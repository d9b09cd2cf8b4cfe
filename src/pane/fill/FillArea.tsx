import { makeStyles, Spinner, tokens } from "@fluentui/react-components";
import { useEffect, useMemo, useRef } from "react";
import { flushSync } from "react-dom";
import type { Workbook } from "../../workbook/workbook";
import { ProblemNote } from "../kit/ProblemNote";
import type { Shop } from "../shop/useShop";
import { AnalyseStage } from "./AnalyseStage";
import { FillProvider, type Filling } from "./FillContext";
import { FillStage } from "./FillStage";
import { STAGES, type Stage } from "../../counter/form";
import { HandOverStage } from "./HandOverStage";
import { fillModel } from "../../counter/plan/model";
import { PlanStage } from "./PlanStage";
import { ReceiveStage } from "./ReceiveStage";
import { RowStage } from "./RowStage";
import { TOUCH, useFillStyles } from "./styles";
import { useFillForm } from "./useFillForm";
import { useRegister } from "./useRegister";

interface FillAreaProps {
  readonly workbook: Workbook;
  readonly shop: Shop;
}

const useStyles = makeStyles({
  bar: { display: "flex", flexWrap: "wrap", gap: "4px" },
  stage: {
    flexGrow: 1,
    minHeight: TOUCH,
    minWidth: TOUCH,
    padding: "2px 6px",
    font: "inherit",
    fontSize: tokens.fontSizeBase200,
    color: tokens.colorNeutralForeground2,
    backgroundColor: tokens.colorNeutralBackground1,
    border: `1px solid ${tokens.colorNeutralStroke1}`,
    borderRadius: tokens.borderRadiusMedium,
    cursor: "pointer",
    ":focus-visible": { outline: `2px solid ${tokens.colorStrokeFocus2}`, outlineOffset: "1px" },
    "&[aria-current=step], &[aria-pressed=true]": {
      color: tokens.colorNeutralForeground1,
      fontWeight: tokens.fontWeightSemibold,
      border: `2px solid ${tokens.colorCompoundBrandStroke}`,
    },
    "@media (forced-colors: active)": {
      "&[aria-current=step], &[aria-pressed=true]": { border: "2px solid Highlight" },
    },
  },
});

const STAGE_WORDS: Readonly<Record<Stage, string>> = {
  receive: "Receive",
  plan: "Plan",
  fill: "Fill",
  analyse: "Analyse",
  "hand over": "Hand over",
};

/** Fill a cylinder: from the counter to the signature, one step after the other, all of it kept as it is typed. */
export default function FillArea({ workbook, shop }: FillAreaProps) {
  const styles = useFillStyles();
  const own = useStyles();
  const state = useFillForm(workbook, shop.settings.units ?? "metric");
  const register = useRegister();
  const { form, change, ready } = state;
  const country = shop.settings.country ?? "";
  const asked = form.written.asked?.text.trim() ?? "";
  const receipt = register.receipts.find((each) => each.asked === asked);
  const { house } = shop.settings;
  const { prices } = register;
  const model = useMemo(
    () => fillModel(form, receipt, country, house, prices),
    [form, receipt, country, house, prices],
  );
  const filling: Filling = { ...state, workbook, shop, country, units: form.units, register, receipt, model };

  // A cylinder that was on the counter when the pane closed is still there when it opens.
  const { ask } = register;
  const resumed = useRef(false);
  useEffect(() => {
    if (!ready || resumed.current) return;
    resumed.current = true;
    if (asked !== "" && !form.several) ask([asked], form.entered);
    else if (form.stage !== "receive") ask([], form.entered);
  }, [ready, asked, form, ask]);

  const stage = useRef<HTMLDivElement>(null);
  const goTo = (next: Stage) => {
    // A fill may be planned without a cylinder: the prices of the workbook are wanted all the same.
    if (next === "plan" && register.sheets.length === 0 && !register.busy) ask([], form.entered);
    // Shown before the next key comes: whoever types on types into the new step.
    flushSync(() => {
      change((before) => ({ ...before, stage: next, several: false }));
    });
    stage.current?.scrollIntoView({ block: "nearest" });
    stage.current?.focus({ preventScroll: true });
  };
  if (!ready) return <Spinner label="Reading what was begun here" />;
  return (
    <FillProvider value={filling}>
      <div className={styles.area}>
        <nav aria-label="Steps" className={own.bar}>
          {STAGES.map((name) => (
            <button
              key={name}
              type="button"
              className={own.stage}
              aria-current={!form.several && form.stage === name ? "step" : undefined}
              onClick={() => {
                goTo(name);
              }}
            >
              {STAGE_WORDS[name]}
            </button>
          ))}
        </nav>
        <div className={own.bar} role="group" aria-label="Units and number of cylinders">
          {(["us", "metric"] as const).map((units) => (
            <button
              key={units}
              type="button"
              className={own.stage}
              aria-pressed={form.units === units}
              onClick={() => {
                change((before) => ({ ...before, units }));
              }}
            >
              {units === "us" ? "psi, ft, °F" : "bar, m, °C"}
            </button>
          ))}
          <button
            type="button"
            className={own.stage}
            aria-pressed={form.several}
            onClick={() => {
              change((before) => ({ ...before, several: !before.several }));
            }}
          >
            A row
          </button>
        </div>
        {state.problem && <ProblemNote problem={state.problem} />}
        <div ref={stage} tabIndex={-1} style={{ outline: "none" }}>
          {form.several ? <RowStage /> : <OneStage stage={form.stage} goTo={goTo} />}
        </div>
      </div>
    </FillProvider>
  );
}

function OneStage({ stage, goTo }: { readonly stage: Stage; readonly goTo: (stage: Stage) => void }) {
  const next = () => {
    goTo(STAGES[(STAGES.indexOf(stage) + 1) % STAGES.length]!);
  };
  switch (stage) {
    case "receive":
      return <ReceiveStage onNext={next} />;
    case "plan":
      return <PlanStage onNext={next} />;
    case "fill":
      return <FillStage onNext={next} />;
    case "analyse":
      return <AnalyseStage onNext={next} />;
    case "hand over":
      return <HandOverStage onNext={next} />;
  }
}
