import { useCallback, useEffect, useRef, useState } from "react";
import type { Workbook } from "../../workbook/workbook";
import { NO_SETTINGS, readShopSettings, writeShopSettings, type ShopSettings } from "../../workbook/settings";
import { problemOf, type Problem } from "../../session/problem";

export interface Shop {
  readonly settings: ShopSettings;
  readonly state: "reading" | "ready" | "failed";
  /** Something stored could not be understood. */
  readonly notice: string | undefined;
  readonly problem: Problem | undefined;
  /** Whether answers stay in the workbook, or only until the pane closes. */
  readonly kept: boolean;
  /** Changes some of the settings at once, and keeps them. */
  change(next: (settings: ShopSettings) => ShopSettings): void;
  readAgain(): void;
}

/** The shop's settings in this workbook, and the way to change them. */
export function useShop(workbook: Workbook): Shop {
  const [settings, setSettings] = useState(NO_SETTINGS);
  const [state, setState] = useState<Shop["state"]>("reading");
  const [notice, setNotice] = useState<string>();
  const [problem, setProblem] = useState<Problem>();
  const [tries, setTries] = useState(0);
  const latest = useRef(settings);
  const lastWrite = useRef(Promise.resolve());
  const kept = workbook.capabilities.settings;

  useEffect(() => {
    let wanted = true;
    setState("reading");
    setProblem(undefined);
    const read = kept ? readShopSettings(workbook) : Promise.resolve({ settings: NO_SETTINGS });
    read
      .then((reading: Awaited<ReturnType<typeof readShopSettings>>) => {
        if (!wanted) return;
        latest.current = reading.settings;
        setSettings(reading.settings);
        setNotice(reading.notice);
        setState("ready");
      })
      .catch((thrown: unknown) => {
        if (!wanted) return;
        setProblem(problemOf(thrown));
        setState("failed");
      });
    return () => {
      wanted = false;
    };
  }, [workbook, kept, tries]);

  const change = useCallback(
    (next: (settings: ShopSettings) => ShopSettings) => {
      latest.current = next(latest.current);
      setSettings(latest.current);
      if (!kept) return;
      // One write after the other, each with what is newest by then: an early answer never overtakes a later one.
      lastWrite.current = lastWrite.current
        .then(() => writeShopSettings(workbook, latest.current))
        .then(
          () => {
            setProblem(undefined);
          },
          (thrown: unknown) => {
            const { sentence, details } = problemOf(thrown);
            setProblem({
              sentence: `Your answer holds until this pane closes, but could not be kept in the workbook. ${sentence}`,
              details,
            });
          },
        );
    },
    [workbook, kept],
  );

  const readAgain = useCallback(() => {
    setTries((n) => n + 1);
  }, []);
  return { settings, state, notice, problem, kept, change, readAgain };
}
