import {
  FluentProvider,
  makeStyles,
  mergeClasses,
  Spinner,
  Tab,
  TabList,
  tokens,
} from "@fluentui/react-components";
import { useCallback, useRef, useState } from "react";
import { Pane } from "../pane/Pane";
import { THEMES } from "../pane/theme";
import { CellLine } from "./CellLine";
import { DropZone } from "./DropZone";
import { NewVersionMessage, ProblemMessage, UnsavedMessage, WorkMessage } from "./Messages";
import { NARROW } from "./narrow";
import { PageHeader } from "./PageHeader";
import { useAppearance } from "./useAppearance";
import { useDesk } from "./useDesk";
import { useNewVersion } from "./useNewVersion";
import { useFocusTurns, type View } from "./useFocusTurns";

const useStyles = makeStyles({
  page: {
    display: "flex",
    flexDirection: "column",
    height: "100dvh",
    overflow: "hidden",
    outline: "none",
    backgroundColor: tokens.colorNeutralBackground3,
  },
  turns: {
    display: "none",
    flexShrink: 0,
    borderBottom: `1px solid ${tokens.colorNeutralStroke2}`,
    [NARROW]: { display: "block" },
  },
  body: { display: "flex", flexGrow: 1, minHeight: 0 },
  workbook: { display: "flex", flexDirection: "column", flexGrow: 1, minWidth: 0 },
  grid: { position: "relative", flexGrow: 1, minHeight: 0 },
  status: {
    display: "flex",
    flexWrap: "wrap",
    justifyContent: "space-between",
    columnGap: "16px",
    flexShrink: 0,
    margin: 0,
    padding: "4px 12px",
    borderTop: `1px solid ${tokens.colorNeutralStroke2}`,
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
    color: tokens.colorNeutralForeground2,
  },
  pane: {
    flexShrink: 0,
    width: "350px",
    borderLeft: `1px solid ${tokens.colorNeutralStroke2}`,
    [NARROW]: { width: "100%", borderLeft: "none" },
  },
  waitsItsTurn: { [NARROW]: { display: "none" } },
});

const KEYS_ID = "keys-of-the-page";

/** The local workbook: a grid with the worksheet functions, and the task pane beside it. */
export function Page() {
  const styles = useStyles();
  const appearance = useAppearance();
  const [view, setView] = useState<View>("workbook");
  const [waiting, setWaiting] = useState<File>();
  const page = useRef<HTMLDivElement>(null);
  const container = useRef<HTMLDivElement>(null);
  const pane = useRef<HTMLDivElement>(null);
  const showWorkbook = useCallback(() => {
    setView("workbook");
  }, []);
  const desk = useDesk(container, appearance, showWorkbook);
  useFocusTurns({ page, grid: container, pane }, setView);
  const { opened, work, problem } = desk;
  const newVersion = useNewVersion();

  const openUnlessLost = (file: File) => {
    if (desk.unsaved()) setWaiting(file);
    else desk.open(file);
  };

  return (
    <FluentProvider theme={THEMES[appearance]}>
      <div ref={page} tabIndex={-1} className={styles.page}>
        <PageHeader opened={opened} onOpen={openUnlessLost} onSaveCopy={desk.saveCopy} />
        {newVersion.isHere && <NewVersionMessage onReload={newVersion.reload} />}
        {work && <WorkMessage work={work} />}
        {problem && <ProblemMessage problem={problem} onDismiss={desk.dismissProblem} />}
        {waiting && opened && (
          <UnsavedMessage
            openName={opened.fileName}
            waitingName={waiting.name}
            onOpen={() => {
              setWaiting(undefined);
              desk.open(waiting);
            }}
            onSave={() => {
              setWaiting(undefined);
              desk.saveCopy();
            }}
            onKeep={() => {
              setWaiting(undefined);
            }}
          />
        )}
        <div className={styles.turns}>
          <TabList
            size="small"
            selectedValue={view}
            onTabSelect={(_, { value }) => {
              setView(value as View);
            }}
            aria-label="What to look at"
          >
            <Tab value="workbook">Workbook</Tab>
            <Tab value="pane">Check and fill</Tab>
          </TabList>
        </div>
        <div className={styles.body}>
          <section
            className={mergeClasses(styles.workbook, view === "pane" && styles.waitsItsTurn)}
            aria-label="Workbook"
            aria-describedby={KEYS_ID}
          >
            <div ref={container} className={styles.grid} />
            <CellLine selected={desk.selected} onFollow={desk.follow} />
            <div className={styles.status}>
              <span>{opened?.summary}</span>
              <span id={KEYS_ID}>F6 goes from grid to pane and back.</span>
            </div>
          </section>
          <div ref={pane} className={mergeClasses(styles.pane, view === "workbook" && styles.waitsItsTurn)}>
            {opened ? (
              <Pane
                workbook={opened.workbook}
                appearance={appearance}
                headed={false}
                onOpenSample={opened.sample ? undefined : desk.openSample}
              />
            ) : (
              <Spinner label="Opening" />
            )}
          </div>
        </div>
        <DropZone onDrop={openUnlessLost} />
      </div>
    </FluentProvider>
  );
}
