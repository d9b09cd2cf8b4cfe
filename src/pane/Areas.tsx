import { makeStyles, Tab, TabList, tokens } from "@fluentui/react-components";
import { useId, useState } from "react";
import { CheckArea } from "./check/CheckArea";
import { useCheck } from "./check/useCheck";
import type { PaneProps } from "./Pane";
import { ShopArea } from "./shop/ShopArea";
import type { Shop } from "./shop/useShop";

interface AreasProps extends Omit<PaneProps, "appearance"> {
  readonly shop: Shop;
}

type Area = "check" | "shop";

const useStyles = makeStyles({
  tabs: {
    flexShrink: 0,
    borderBottom: `1px solid ${tokens.colorNeutralStroke2}`,
    paddingLeft: "2px",
    "& [role=tab]": { paddingLeft: "10px", paddingRight: "10px" },
  },
  area: { flexGrow: 1, display: "flex", flexDirection: "column" },
});

/** What a person may want to do here; a check goes on while they look at another area. */
export function Areas({ workbook, shop, onOpenSample, watchChanges }: AreasProps) {
  const styles = useStyles();
  const id = useId();
  const [area, setArea] = useState<Area>("check");
  const check = useCheck(workbook, shop, watchChanges);
  return (
    <>
      <TabList
        size="small"
        className={styles.tabs}
        selectedValue={area}
        onTabSelect={(_, { value }) => {
          setArea(value as Area);
        }}
        aria-label="Areas"
      >
        <Tab value="check" id={`${id}-check`} aria-controls={`${id}-panel`}>
          Check the log
        </Tab>
        <Tab value="shop" id={`${id}-shop`} aria-controls={`${id}-panel`}>
          Rules &amp; shop
        </Tab>
      </TabList>
      <div role="tabpanel" id={`${id}-panel`} aria-labelledby={`${id}-${area}`} className={styles.area}>
        {area === "check" && <CheckArea check={check} workbook={workbook} onOpenSample={onOpenSample} />}
        {area === "shop" && <ShopArea shop={shop} />}
      </div>
    </>
  );
}
