import { vi } from "vitest";
import type { AnswerTo, ArgumentsOf, QuestionName } from "../../src/session/questions";
import { Session } from "../../src/session/session";
import type { FromHost, ToHost } from "../../src/session/worker/messages";
import type { StartWorker } from "../../src/session/worker/client";
import type { ShopSettings } from "../../src/workbook/settings";
import type { Workbook } from "../../src/workbook/workbook";
import { US_SHOP } from "../pane/fakeWorkbook";

/** No worker can start: all is done on the page. */
export const onPage = () => Promise.resolve(undefined);

/** A worker in this thread: the real worker's code, with messages copied as between real ones. */
export async function workerHere(): Promise<Worker> {
  const outside: { onmessage?: (event: { data: FromHost }) => void; onerror?: unknown } = {};
  const inside: { onmessage?: (event: { data: ToHost }) => void; postMessage: (data: FromHost) => void } = {
    postMessage: (data) => outside.onmessage?.({ data: structuredClone(data) }),
  };
  vi.stubGlobal("self", inside);
  vi.resetModules();
  await import("../../src/session/worker/worker");
  return Object.assign(outside, {
    postMessage: (data: ToHost) => {
      const copy = structuredClone(data);
      setTimeout(() => inside.onmessage?.({ data: copy }));
    },
    terminate: () => {
      delete inside.onmessage;
    },
  }) as unknown as Worker;
}

/** A session on a workbook, as a shop in the US has it. */
export function openSession(
  workbook: Workbook,
  start: StartWorker = onPage,
  settings: object = US_SHOP,
): Session {
  const session = new Session(workbook, start);
  session.setSettings(settings as ShopSettings);
  return session;
}

export async function answerOf<Name extends QuestionName>(
  session: Session,
  name: Name,
  wanted: ArgumentsOf<Name>,
  signal = new AbortController().signal,
): Promise<AnswerTo<Name>> {
  return (await session.ask(name, wanted, { progress: () => undefined, signal })).answer;
}
