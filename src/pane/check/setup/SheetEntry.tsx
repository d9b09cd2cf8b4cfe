import { Button, Checkbox, makeStyles, tokens } from "@fluentui/react-components";
import type { SheetKind } from "../../../log/log";
import { Disclosure } from "../../kit/Disclosure";
import type { Shop } from "../../shop/useShop";
import { chooseSheet, forgetGone, goneHeadings, saidOf } from "../choices";
import { fieldWord, isField } from "../../../words/fields";
import { counted, type SheetReading } from "../report";
import { ColumnEntry, howSure } from "./ColumnEntry";

interface SheetEntryProps {
  readonly sheet: SheetReading;
  readonly chosen: boolean;
  readonly shop: Shop;
}

const useStyles = makeStyles({
  entry: {
    padding: "4px 8px 6px 4px",
    ":not(:last-child)": { borderBottom: `1px solid ${tokens.colorNeutralStroke2}` },
  },
  under: {
    paddingLeft: "36px",
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
    marginTop: "-4px",
  },
  why: { margin: 0, color: tokens.colorNeutralForeground3 },
  columns: { listStyleType: "none", margin: "0 0 0 -28px", padding: 0 },
  gone: { margin: "4px 0" },
});

/** One sheet: whether it is checked, what it is, and its columns. */
export function SheetEntry({ sheet, chosen, shop }: SheetEntryProps) {
  const styles = useStyles();
  return (
    <li className={styles.entry}>
      <Checkbox
        checked={chosen}
        label={sheet.name}
        onChange={(_, { checked }) => {
          shop.change((settings) => chooseSheet(settings, sheet.name, checked === true));
        }}
      />
      <div className={styles.under}>
        <p className={styles.why}>{whatItIs(sheet)}</p>
        {(sheet.headingsChanged || goneHeadings(shop.settings, sheet).length > 0) && (
          <ChangedHeadings sheet={sheet} shop={shop} />
        )}
        {sheet.columns.length > 0 && (
          <Disclosure title={columnsInWords(sheet, shop)}>
            <ul className={styles.columns}>
              {sheet.columns.map((column) => (
                <ColumnEntry
                  key={`${column.rows?.first} ${column.column}`}
                  sheet={sheet}
                  column={column}
                  shop={shop}
                />
              ))}
            </ul>
          </Disclosure>
        )}
      </div>
    </li>
  );
}

/** What was said of headings that are gone: looked at again by the shop, never dropped in silence. */
function ChangedHeadings({ sheet, shop }: { sheet: SheetReading; shop: Shop }) {
  const styles = useStyles();
  const gone = goneHeadings(shop.settings, sheet);
  const said = gone.map(({ heading, field }) =>
    typeof field === "string" && isField(field) ? `“${heading}” (${fieldWord(field)})` : `“${heading}”`,
  );
  return (
    <div>
      <p className={styles.gone}>
        The headings changed since you last set these columns. Look them over.
        {gone.length > 0 && ` No longer here: ${said.join(", ")}.`}
      </p>
      {gone.length > 0 && (
        <Button
          size="small"
          onClick={() => {
            shop.change((settings) => forgetGone(settings, sheet));
          }}
        >
          Forget {gone.length === 1 ? "it" : "them"}
        </Button>
      )}
    </div>
  );
}

const KIND_WORDS: Readonly<Record<Exclude<SheetKind, "neither">, string>> = {
  fills: "Log",
  register: "Register",
  flat: "Log with cylinder data in the row",
};

function whatItIs({ kind, why, rows }: SheetReading): string {
  if (kind === "neither") return why ?? "No fill log or register was found in it.";
  const held = [
    ...(rows.fills > 0 ? [counted(rows.fills, "fill")] : []),
    ...(rows.cylinders > 0 ? [counted(rows.cylinders, "cylinder")] : []),
  ];
  return [KIND_WORDS[kind], ...(held.length > 0 ? held : ["no rows"])].join(", ");
}

/** `14 columns: 11 sure, 1 likely, 2 not read`. */
function columnsInWords(sheet: SheetReading, shop: Shop): string {
  const words = sheet.columns.map((column) =>
    howSure(column, saidOf(shop.settings, sheet, column) !== undefined),
  );
  const parts = ["set by you", "sure", "likely", "a guess", "not read"]
    .map((word) => [words.filter((other) => other === word).length, word] as const)
    .filter(([n]) => n > 0)
    .map(([n, word]) => `${n} ${word}`);
  return `${counted(sheet.columns.length, "column")}: ${parts.join(", ")}`;
}
