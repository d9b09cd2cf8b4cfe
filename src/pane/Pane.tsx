import { FluentProvider, makeStyles, Spinner, tokens } from "@fluentui/react-components";
import { useEffect, useRef, type ReactNode } from "react";
import type { FormulaHost, Workbook } from "../workbook/workbook";
import { Areas } from "./Areas";
import { FormulaNote } from "./FormulaNote";
import { AnnouncerProvider } from "./kit/announce";
import { ProblemNote, Notice } from "./kit/ProblemNote";
import { PaneHeader } from "./PaneHeader";
import { FirstQuestion } from "./shop/FirstQuestion";
import { useShop } from "./shop/useShop";
import type { StartWorker } from "../session/worker/client";
import { SessionProvider } from "./session";
import { THEMES, type Appearance } from "./theme";

export interface PaneProps {
  readonly workbook: Workbook;
  readonly appearance: Appearance;
  /** Whether the pane carries the mark and the name; not where the page around it does. */
  readonly headed?: boolean;
  /** Opens the sample log, where the host has one to offer. */
  readonly onOpenSample?: () => void;
  /** Starts the worker that reads and judges; where none can start, the page does it. */
  readonly startWorker?: StartWorker;
  /** Where the pane has to explain the formula in the selected cell, as the host itself has no place for it. */
  readonly formulas?: FormulaHost;
  /** What the host itself has to say, above all else. */
  readonly hostNote?: ReactNode;
}

const useStyles = makeStyles({
  provider: { height: "100%", display: "flex", flexDirection: "column" },
  pane: {
    flexGrow: 1,
    minHeight: 0,
    overflowY: "auto",
    overflowX: "hidden",
    // What gets the focus is not to end up behind the tabs above and the status line below.
    scrollPaddingTop: "80px",
    scrollPaddingBottom: "64px",
    position: "relative",
    display: "flex",
    flexDirection: "column",
    boxSizing: "border-box",
    backgroundColor: tokens.colorNeutralBackground3,
    color: tokens.colorNeutralForeground1,
    fontSize: tokens.fontSizeBase300,
    lineHeight: tokens.lineHeightBase300,
    fontVariantNumeric: "tabular-nums",
    // A word too long for its line is broken, but no column or tile is made narrower than its words.
    overflowWrap: "break-word",
    // A list is as wide as its longest entry, unless it is told to fit.
    "& .fui-Field, & .fui-Field > *, & select, & input": { minWidth: 0, maxWidth: "100%" },
    "@media (forced-colors: active)": { borderLeft: "1px solid CanvasText" },
  },
  padded: { padding: "0 12px 12px", display: "flex", flexDirection: "column", gap: "12px" },
});

/** The task pane: the same in Excel and beside the local grid. It knows the workbook only by its port. */
export function Pane({ appearance, formulas, hostNote, ...props }: PaneProps) {
  const styles = useStyles();
  return (
    <FluentProvider theme={THEMES[appearance]} className={styles.provider}>
      <AnnouncerProvider>
        {hostNote}
        {/* Another workbook is another shop: nothing of the old one may linger. */}
        <ShopPane key={useSerial(props.workbook)} {...props} />
        {formulas && <FormulaNote host={formulas} />}
      </AnnouncerProvider>
    </FluentProvider>
  );
}

function ShopPane({
  workbook,
  headed = true,
  onOpenSample,
  startWorker,
}: Omit<PaneProps, "appearance" | "formulas" | "hostNote">) {
  const styles = useStyles();
  const shop = useShop(workbook);
  const { country, units } = shop.settings;
  const answered = country !== undefined && units !== undefined;
  const main = useRef<HTMLElement>(null);
  const isAsked = shop.state === "ready" && !answered;
  const wasAsked = useRef(isAsked);
  useEffect(() => {
    // The button that answered the first question is gone: whoever works by keyboard goes on from the areas.
    if (wasAsked.current && !isAsked && shop.state === "ready")
      main.current?.querySelector<HTMLElement>("[role=tab][aria-selected=true]")?.focus();
    wasAsked.current = isAsked;
  }, [isAsked, shop.state]);
  return (
    <main ref={main} className={styles.pane}>
      {headed && <PaneHeader />}
      {(shop.problem !== undefined || shop.notice !== undefined) && (
        <div className={styles.padded}>
          {shop.problem && (
            <ProblemNote
              problem={shop.problem}
              onTryAgain={shop.state === "failed" ? shop.readAgain : undefined}
            />
          )}
          {shop.notice && <Notice>{shop.notice}</Notice>}
        </div>
      )}
      {shop.state === "reading" && <Spinner label="Reading this workbook's settings" />}
      {shop.state === "ready" && (
        <SessionProvider workbook={workbook} settings={shop.settings} startWorker={startWorker}>
          {answered ? (
            <Areas workbook={workbook} shop={shop} onOpenSample={onOpenSample} />
          ) : (
            <FirstQuestion shop={shop} onOpenSample={onOpenSample} />
          )}
        </SessionProvider>
      )}
    </main>
  );
}

/** A number that is another one for each object seen. */
function useSerial(of: object): number {
  const seen = useRef({ of, serial: 0 });
  if (seen.current.of !== of) seen.current = { of, serial: seen.current.serial + 1 };
  return seen.current.serial;
}
