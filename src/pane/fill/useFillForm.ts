import { useCallback, useEffect, useRef, useState } from "react";
import type { Units } from "../../gas/units";
import type { Workbook } from "../../workbook/workbook";
import { problemOf, type Problem } from "../../session/problem";
import { FORM_KEY, keptForm } from "./keptForm";
import { newForm, writeField, type FieldName, type FillForm } from "../../counter/form";

export interface FormState {
  readonly form: FillForm;
  /** False until what was kept has been read. */
  readonly ready: boolean;
  readonly problem: Problem | undefined;
  change(next: (form: FillForm) => FillForm): void;
  write(name: FieldName, text: string): void;
}

/** Typing is kept when it pauses for so long, and at once when the area goes. */
const KEPT_AFTER_MS = 700;

/** The work of the area, kept in the workbook as it is typed, so that closing the pane loses nothing. */
export function useFillForm(workbook: Workbook, units: Units): FormState {
  const [form, setForm] = useState(() => newForm(units));
  const [ready, setReady] = useState(false);
  const [problem, setProblem] = useState<Problem>();
  const latest = useRef(form);
  const timer = useRef<ReturnType<typeof setTimeout>>();
  const lastWrite = useRef(Promise.resolve());
  const keeps = workbook.capabilities.settings;

  const keep = useCallback(() => {
    if (timer.current === undefined) return;
    clearTimeout(timer.current);
    timer.current = undefined;
    lastWrite.current = lastWrite.current
      .then(() => workbook.writeSetting(FORM_KEY, latest.current))
      .then(
        () => {
          setProblem(undefined);
        },
        (thrown: unknown) => {
          setProblem(problemOf(thrown));
        },
      );
  }, [workbook]);

  useEffect(() => {
    let wanted = true;
    const read = keeps ? workbook.readSetting(FORM_KEY) : Promise.resolve(null);
    read
      .then(
        (stored) => {
          if (!wanted) return;
          latest.current = keptForm(stored, units);
          setForm(latest.current);
        },
        (thrown: unknown) => {
          if (wanted) setProblem(problemOf(thrown));
        },
      )
      .finally(() => {
        if (wanted) setReady(true);
      });
    return () => {
      wanted = false;
      keep();
    };
    // Read once: what the shop's units are later changes nothing in what was typed.
  }, [workbook, keeps, keep]);

  const change = useCallback(
    (next: (form: FillForm) => FillForm) => {
      latest.current = next(latest.current);
      setForm(latest.current);
      if (!keeps) return;
      clearTimeout(timer.current);
      timer.current = setTimeout(keep, KEPT_AFTER_MS);
    },
    [keeps, keep],
  );
  const write = useCallback(
    (name: FieldName, text: string) => {
      change((before) => writeField(before, name, text));
    },
    [change],
  );
  return { form, ready, problem, change, write };
}
