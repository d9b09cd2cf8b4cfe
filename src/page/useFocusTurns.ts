import { useEffect, useRef, type RefObject } from "react";
import { flushSync } from "react-dom";

export type View = "workbook" | "pane";

/** What can take the focus in the pane where nothing had it yet: the tab that is shown, or the first control. */
const FIRST_IN_PANE = ["[role=tab][aria-selected=true]", "input, select, textarea, button, a[href]"];

interface FocusTurns {
  /** All of it; here the focus rests while nobody has taken it anywhere. */
  readonly page: RefObject<HTMLElement | null>;
  readonly grid: RefObject<HTMLElement | null>;
  readonly pane: RefObject<HTMLElement | null>;
}

/**
 * Lets the keyboard out of the grid, which keeps Tab and Escape for itself: F6 goes to the pane and back, each time to
 * where the focus was last. And keeps it out until somebody goes there, as the grid takes the focus by itself when it
 * opens a workbook, and the next key would write over a cell of the log.
 */
export function useFocusTurns({ page, grid, pane }: FocusTurns, onTurn: (to: View) => void): void {
  const lastInGrid = useRef<HTMLElement>(undefined);
  const lastInPane = useRef<HTMLElement>(undefined);
  const isInvited = useRef(false);

  useEffect(() => {
    const holds = (place: RefObject<HTMLElement | null>, target: EventTarget | null): target is HTMLElement =>
      target instanceof HTMLElement && place.current?.contains(target) === true;

    const goTo = (to: View) => {
      flushSync(() => onTurn(to));
      isInvited.current = to === "workbook";
      const target = to === "workbook" ? lastInGrid.current : controlIn(pane.current, lastInPane.current);
      target?.focus({ preventScroll: to === "workbook" });
    };
    const onKeyDown = (event: KeyboardEvent) => {
      if (event.key === "Tab") isInvited.current = true;
      if (event.key !== "F6" || event.ctrlKey || event.altKey || event.metaKey) return;
      event.preventDefault();
      event.stopImmediatePropagation();
      goTo(holds(grid, document.activeElement) ? "pane" : "workbook");
    };
    const onPointerDown = ({ target }: PointerEvent) => {
      isInvited.current = !holds(pane, target);
    };
    const onFocusIn = ({ target, relatedTarget }: FocusEvent) => {
      if (holds(pane, target)) lastInPane.current = target;
      if (!holds(grid, target)) {
        if (holds(page, target)) isInvited.current = false;
        return;
      }
      lastInGrid.current = target;
      if (isInvited.current) return;
      const back = relatedTarget instanceof HTMLElement ? relatedTarget : page.current;
      back?.focus({ preventScroll: true });
    };
    window.addEventListener("keydown", onKeyDown, true);
    window.addEventListener("pointerdown", onPointerDown, true);
    window.addEventListener("focusin", onFocusIn, true);
    return () => {
      window.removeEventListener("keydown", onKeyDown, true);
      window.removeEventListener("pointerdown", onPointerDown, true);
      window.removeEventListener("focusin", onFocusIn, true);
    };
  }, [page, grid, pane, onTurn]);
}

function controlIn(pane: HTMLElement | null, last: HTMLElement | undefined): HTMLElement | undefined {
  if (last?.isConnected && last.checkVisibility()) return last;
  for (const each of FIRST_IN_PANE) {
    const found = pane?.querySelector<HTMLElement>(each);
    if (found) return found;
  }
  return undefined;
}
