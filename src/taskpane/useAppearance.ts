import { useSyncExternalStore } from "react";
import type { Appearance } from "../pane/theme";

const darkWanted = window.matchMedia("(prefers-color-scheme: dark)");

/** Light or dark as Excel has it, or, where Excel does not say, as the system has it. */
export function useAppearance(): Appearance {
  return useSyncExternalStore(listen, appearance);
}

function appearance(): Appearance {
  // Older Excels and some platforms have no theme at all, whatever the typings say.
  const theme = Office.context.officeTheme as Office.OfficeTheme | undefined;
  return (theme?.isDarkTheme ?? darkWanted.matches) ? "dark" : "light";
}

/** Excel sends no word of a new theme: look again whenever the pane comes into view or into use. */
function listen(look: () => void): () => void {
  const occasions: readonly [EventTarget, string][] = [
    [darkWanted, "change"],
    [document, "visibilitychange"],
    [window, "focus"],
  ];
  for (const [target, event] of occasions) target.addEventListener(event, look);
  return () => {
    for (const [target, event] of occasions) target.removeEventListener(event, look);
  };
}
