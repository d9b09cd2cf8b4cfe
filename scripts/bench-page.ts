import { spawn } from "node:child_process";
import { createInterface } from "node:readline";

/** The local workbook as `npm start` serves it. */
export interface ServedPage {
  readonly address: string;
  stop(): void;
}

export async function servedPage(): Promise<ServedPage> {
  const server = spawn(process.execPath, ["scripts/start.mjs"], {
    env: { ...process.env, PORT: "0" },
    stdio: ["ignore", "pipe", "ignore"],
  });
  for await (const line of createInterface({ input: server.stdout })) {
    const address = /http:\/\/\S+/.exec(line)?.[0];
    if (address) return { address, stop: () => server.kill() };
  }
  throw new Error("The start command printed no address.");
}
