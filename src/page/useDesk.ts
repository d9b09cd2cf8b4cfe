import { useCallback, useEffect, useRef, useState, type RefObject } from "react";
import type { Problem } from "../session/problem";
import type { Appearance } from "../pane/theme";
import type { CellAddress } from "../sheet/sheet";
import type { Desk, SelectedCell } from "./desk";
import { download } from "../pane/kit/download";
import { copyName, summaryOf, type Opened } from "./opened";
import { sampleLog } from "./sample";
import { useWork, type Work } from "./useWork";

export interface DeskState {
  readonly opened: Opened | undefined;
  readonly selected: SelectedCell | undefined;
  readonly work: Work | undefined;
  readonly problem: Problem | undefined;
  readonly dismissProblem: () => void;
  /** Whether something would be lost with the workbook that is open. */
  readonly unsaved: () => boolean;
  readonly open: (file: File) => void;
  readonly openSample: () => void;
  readonly saveCopy: () => void;
  /** Goes where a link of the workbook leads. */
  readonly follow: (target: CellAddress) => void;
}

/**
 * The page's one desk: what lies on it, and what can be done with it. It opens the sample log by itself;
 * `onShow` hears when a cell was to be shown.
 */
export function useDesk(
  container: RefObject<HTMLElement | null>,
  appearance: Appearance,
  onShow: () => void,
): DeskState {
  const desk = useRef<Promise<Desk>>(undefined);
  const unsaved = useRef(false);
  const [opened, setOpened] = useState<Opened>();
  const [selected, setSelected] = useState<SelectedCell>();
  const { start, fail, ...underWay } = useWork();

  const openBytes = useCallback(
    (fileName: string, sample: boolean, read: () => Promise<Uint8Array>) => {
      start(`Opening ${fileName}`, async (progress, signal) => {
        const { openFile } = await import(/* webpackPreload: true */ "../workbook/file/openFile");
        const { content } = await openFile(await read(), fileName, { progress, signal });
        const shown = await desk.current!;
        signal.throwIfAborted();
        const onOwnChange = () => {
          unsaved.current ||= !sample;
        };
        const workbook = await shown.open(content, { onShow, onOwnChange }, signal);
        unsaved.current = false;
        setOpened({ workbook, fileName, sample, summary: summaryOf(fileName, content) });
        setSelected(shown.selected());
        /* For the browser's console, and for tests. */
        Object.assign(window, { brimbook: { workbook, selected: () => shown.selected()?.address } });
      });
    },
    [start, onShow],
  );

  const openSample = useCallback(() => {
    openBytes(sampleLog.fileName, true, sampleLog.read);
  }, [openBytes]);

  const open = useCallback(
    (file: File) => {
      openBytes(file.name, false, async () => new Uint8Array(await file.arrayBuffer()));
    },
    [openBytes],
  );

  const saveCopy = useCallback(() => {
    if (!opened) return;
    const fileName = copyName(opened.fileName);
    start(`Saving ${fileName}`, async (progress, signal) => {
      await (await desk.current!).finishTyping();
      const content = await opened.workbook.content(progress, signal);
      const { writeXlsx } = await import("../workbook/file/writeXlsx");
      const bytes = await writeXlsx(content);
      signal.throwIfAborted();
      download(bytes, fileName);
      unsaved.current = false;
    });
  }, [opened, start]);

  const follow = useCallback(
    (target: CellAddress) => {
      opened?.workbook.selectCell(target).catch(fail);
    },
    [opened, fail],
  );

  useEffect(() => {
    const box = container.current;
    if (!box || desk.current) return;
    desk.current = import(/* webpackPreload: true */ "./desk").then(async ({ Desk }) => {
      const look = () => {
        setSelected(started.selected());
      };
      const started = await Desk.start(box, {
        onSelect: look,
        onCalculate: look,
        onProblem: fail,
        onEdit: () => {
          unsaved.current = true;
          look();
        },
      });
      return started;
    });
    openSample();
  }, [container, openSample, fail]);

  useEffect(() => {
    void desk.current?.then((started) => {
      started.setDark(appearance === "dark");
    });
  }, [appearance]);

  useEffect(() => {
    const warn = (leaving: BeforeUnloadEvent) => {
      if (unsaved.current) leaving.preventDefault();
    };
    window.addEventListener("beforeunload", warn);
    return () => {
      window.removeEventListener("beforeunload", warn);
    };
  }, []);

  return {
    opened,
    selected,
    ...underWay,
    unsaved: useCallback(() => unsaved.current, []),
    open,
    openSample,
    saveCopy,
    follow,
  };
}
