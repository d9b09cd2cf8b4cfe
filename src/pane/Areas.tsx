import { makeStyles, Spinner } from "@fluentui/react-components";
import { lazy, Suspense, useId, useRef, useState, type ReactNode } from "react";
import { AreaTabs } from "./AreaTabs";
import { CheckArea } from "./check/CheckArea";
import { useCheck } from "./check/useCheck";
import { ShopArea } from "./shop/ShopArea";
import type { Shop } from "./shop/useShop";
import type { Workbook } from "../workbook/workbook";

interface AreasProps {
  readonly workbook: Workbook;
  readonly onOpenSample: (() => void) | undefined;
  readonly shop: Shop;
}

const AREAS = {
  fill: "Fill a cylinder",
  check: "Check the log",
  month: "Month end",
  costs: "Fill costs",
  shop: "Rules & shop",
} as const;

interface AreaPanelProps {
  readonly id: string;
  readonly name: keyof typeof AREAS;
  readonly shown: keyof typeof AREAS;
  readonly children: ReactNode;
}

const useStyles = makeStyles({
  shown: { flexGrow: 1, display: "flex", flexDirection: "column" },
  hidden: { display: "none" },
});

/** An area stays as it was left while another one is shown. */
function AreaPanel({ id, name, shown, children }: AreaPanelProps) {
  const styles = useStyles();
  return (
    <div
      role="tabpanel"
      id={`${id}-${name}-panel`}
      aria-labelledby={`${id}-${name}`}
      className={name === shown ? styles.shown : styles.hidden}
    >
      {children}
    </div>
  );
}

/** Fetched when it is first looked at. */
const FillArea = lazy(() => import("./fill/FillArea"));
const MonthArea = lazy(() => import("./month/MonthArea").then(({ MonthArea: area }) => ({ default: area })));
const CostsArea = lazy(() => import("./costs/CostsArea").then(({ CostsArea: area }) => ({ default: area })));

/** What a person may want to do here; a check goes on while they look at another area. */
export function Areas({ workbook, shop, onOpenSample }: AreasProps) {
  const id = useId();
  const [area, setArea] = useState<keyof typeof AREAS>("check");
  const seenFill = useSeen(area === "fill");
  const seenMonth = useSeen(area === "month");
  const seenCosts = useSeen(area === "costs");
  const check = useCheck(shop);
  return (
    <>
      <AreaTabs areas={AREAS} area={area} onArea={setArea} id={id} />
      <AreaPanel id={id} name="fill" shown={area}>
        {seenFill && (
          <Suspense fallback={<Spinner label="Opening the fill" />}>
            <FillArea workbook={workbook} shop={shop} />
          </Suspense>
        )}
      </AreaPanel>
      <AreaPanel id={id} name="check" shown={area}>
        <CheckArea check={check} workbook={workbook} onOpenSample={onOpenSample} />
      </AreaPanel>
      <AreaPanel id={id} name="month" shown={area}>
        {seenMonth && (
          <Suspense fallback={<Spinner label="Opening month end" />}>
            <MonthArea workbook={workbook} shop={shop} />
          </Suspense>
        )}
      </AreaPanel>
      <AreaPanel id={id} name="costs" shown={area}>
        {seenCosts && (
          <Suspense fallback={<Spinner label="Opening fill costs" />}>
            <CostsArea workbook={workbook} shop={shop} />
          </Suspense>
        )}
      </AreaPanel>
      <AreaPanel id={id} name="shop" shown={area}>
        <ShopArea shop={shop} />
      </AreaPanel>
    </>
  );
}

/** Whether something has ever been so: what was opened once stays as it was left. */
function useSeen(now: boolean): boolean {
  const seen = useRef(false);
  seen.current ||= now;
  return seen.current;
}
