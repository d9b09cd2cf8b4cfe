import { makeStyles, mergeClasses, tokens } from "@fluentui/react-components";
import { useRef, type KeyboardEvent } from "react";

interface AreaTabsProps<Area extends string> {
  readonly areas: Readonly<Record<Area, string>>;
  readonly area: Area;
  readonly onArea: (area: Area) => void;
  /** Ids of tabs and panels begin with it: `id-check`, `id-check-panel`. */
  readonly id: string;
  /** What the tabs are, for a screen reader. */
  readonly label?: string;
  /** Whether they stay in sight while their area scrolls. */
  readonly pinned?: boolean;
}

const useStyles = makeStyles({
  tabs: {
    display: "flex",
    flexWrap: "wrap",
    flexShrink: 0,
    padding: "0 6px",
    borderBottom: `1px solid ${tokens.colorNeutralStroke2}`,
  },
  pinned: { position: "sticky", top: 0, zIndex: 2, backgroundColor: tokens.colorNeutralBackground3 },
  tab: {
    padding: "6px 8px 5px",
    font: "inherit",
    color: tokens.colorNeutralForeground2,
    background: "none",
    border: "none",
    borderBottom: "3px solid transparent",
    cursor: "pointer",
    ":hover": { color: tokens.colorNeutralForeground1, borderBottomColor: tokens.colorNeutralStroke1 },
    ":focus-visible": { outline: `2px solid ${tokens.colorStrokeFocus2}`, outlineOffset: "-2px" },
    "&[aria-selected=true]": {
      color: tokens.colorNeutralForeground1,
      fontWeight: tokens.fontWeightSemibold,
      borderBottomColor: tokens.colorCompoundBrandStroke,
    },
    "@media (forced-colors: active)": {
      borderBottomColor: "ButtonFace",
      "&[aria-selected=true]": { borderBottomColor: "Highlight" },
    },
  },
});

/** The areas as tabs: one tab stop, arrows from there. Fluent's own would put unnamed helpers into the page. */
export function AreaTabs<Area extends string>(props: AreaTabsProps<Area>) {
  const { areas, area, onArea, id, label = "Areas", pinned = true } = props;
  const styles = useStyles();
  const list = useRef<HTMLDivElement>(null);
  const names = Object.keys(areas) as Area[];
  const onKeyDown = (event: KeyboardEvent) => {
    const at = names.indexOf(area);
    const to = { ArrowRight: at + 1, ArrowLeft: at - 1, Home: 0, End: names.length - 1 }[event.key];
    const next = to === undefined ? undefined : names[(to + names.length) % names.length];
    if (next === undefined) return;
    event.preventDefault();
    onArea(next);
    list.current?.querySelector<HTMLElement>(`[data-area="${next}"]`)?.focus();
  };
  return (
    <div
      ref={list}
      role="tablist"
      aria-label={label}
      className={mergeClasses(styles.tabs, pinned && styles.pinned)}
      onKeyDown={onKeyDown}
    >
      {names.map((name) => (
        <button
          key={name}
          type="button"
          role="tab"
          id={`${id}-${name}`}
          data-area={name}
          className={styles.tab}
          aria-selected={name === area}
          aria-controls={`${id}-${name}-panel`}
          tabIndex={name === area ? 0 : -1}
          onClick={() => {
            onArea(name);
          }}
        >
          {areas[name]}
        </button>
      ))}
    </div>
  );
}
