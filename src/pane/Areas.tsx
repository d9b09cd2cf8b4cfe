import { makeStyles } from "@fluentui/react-components";
import { useId, useState } from "react";
import { AreaTabs } from "./AreaTabs";
import { CheckArea } from "./check/CheckArea";
import { useCheck } from "./check/useCheck";
import type { PaneProps } from "./Pane";
import { ShopArea } from "./shop/ShopArea";
import type { Shop } from "./shop/useShop";

interface AreasProps extends Omit<PaneProps, "appearance"> {
  readonly shop: Shop;
}

const AREAS = { check: "Check the log", shop: "Rules & shop" } as const;

const useStyles = makeStyles({
  area: { flexGrow: 1, display: "flex", flexDirection: "column" },
});

/** What a person may want to do here; a check goes on while they look at another area. */
export function Areas({ workbook, shop, onOpenSample, watchChanges }: AreasProps) {
  const styles = useStyles();
  const id = useId();
  const [area, setArea] = useState<keyof typeof AREAS>("check");
  const check = useCheck(workbook, shop, watchChanges);
  return (
    <>
      <AreaTabs areas={AREAS} area={area} onArea={setArea} id={id} />
      <div role="tabpanel" id={`${id}-panel`} aria-labelledby={`${id}-${area}`} className={styles.area}>
        {area === "check" && <CheckArea check={check} workbook={workbook} onOpenSample={onOpenSample} />}
        {area === "shop" && <ShopArea shop={shop} />}
      </div>
    </>
  );
}
