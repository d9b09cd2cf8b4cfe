import { spawn } from "node:child_process";
import { createInterface } from "node:readline";
import type { TestProject } from "vitest/node";

declare module "vitest" {
  export interface ProvidedContext {
    /** Where the local workbook is served. */
    address: string;
  }
}

/** Starts the local workbook once for all browser tests, by the command that users start it with. */
export default async function serve(project: TestProject): Promise<() => Promise<void>> {
  const server = spawn(process.execPath, ["scripts/start.mjs"], {
    env: { ...process.env, PORT: "0" },
    stdio: ["ignore", "pipe", "inherit"],
  });
  const ended = new Promise<never>((_resolve, reject) => {
    server.once("exit", (code) => {
      reject(new Error(`The start command ended with code ${String(code)}.`));
    });
  });
  ended.catch(() => undefined);
  project.provide("address", await Promise.race([addressFrom(server.stdout), ended]));
  return async () => {
    server.kill();
    await ended.catch(() => undefined);
  };
}

async function addressFrom(output: NodeJS.ReadableStream): Promise<string> {
  for await (const line of createInterface({ input: output })) {
    const address = /http:\/\/\S+/.exec(line)?.[0];
    if (address) return address;
  }
  throw new Error("The start command printed no address.");
}
