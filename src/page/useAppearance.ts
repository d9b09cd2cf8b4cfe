import { useSyncExternalStore } from "react";
import type { Appearance } from "../pane/theme";

const darkWanted = window.matchMedia("(prefers-color-scheme: dark)");

/** Light or dark, as the system has it now. */
export function useAppearance(): Appearance {
  return useSyncExternalStore(
    (changed) => {
      darkWanted.addEventListener("change", changed);
      return () => {
        darkWanted.removeEventListener("change", changed);
      };
    },
    () => (darkWanted.matches ? "dark" : "light"),
  );
}
