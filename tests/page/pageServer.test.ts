import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { connect, type AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { pageServer } from "../../scripts/page-server.mjs";

describe("the server of the local workbook", () => {
  const around = mkdtempSync(join(tmpdir(), "brimbook-served-"));
  const folder = join(around, "page");
  const server = pageServer(folder);
  let port: number;

  beforeAll(async () => {
    mkdirSync(join(folder, ".git"), { recursive: true });
    mkdirSync(join(around, "page-beside"));
    writeFileSync(join(folder, "index.html"), "<!doctype html><title>Served</title>");
    writeFileSync(join(folder, "manifest.webmanifest"), "{}");
    writeFileSync(join(folder, ".env"), "secret");
    writeFileSync(join(folder, ".git", "config"), "secret");
    writeFileSync(join(around, "outside.txt"), "secret");
    writeFileSync(join(around, "page-beside", "outside.txt"), "secret");
    await new Promise<void>((done) => server.listen(0, "localhost", done));
    port = (server.address() as AddressInfo).port;
  });
  afterAll(() => {
    server.close();
    rmSync(around, { recursive: true });
  });

  /** The bytes of a request as they are, since clients put paths right before they ask. */
  const ask = (path: string, lines: readonly string[] = [`Host: localhost:${port}`], method = "GET") =>
    new Promise<string>((done, failed) => {
      const socket = connect(port, "localhost", () => {
        socket.write([`${method} ${path} HTTP/1.1`, ...lines, "Connection: close", "", ""].join("\r\n"));
      });
      let answer = "";
      socket.on("data", (chunk) => (answer += String(chunk)));
      socket.on("close", () => {
        done(answer);
      });
      socket.on("error", failed);
    });
  const statusOf = async (...given: Parameters<typeof ask>) => Number((await ask(...given)).split(" ")[1]);

  test.each(["localhost", "127.0.0.1", "[::1]", "LOCALHOST"])("answers as %s", async (name) => {
    expect(await ask("/", [`Host: ${name}:${port}`])).toContain("<title>Served</title>");
  });

  test.each([
    "shop.example",
    "localhost.shop.example",
    "192.168.1.20",
    "127.0.0.1.shop.example",
    "localhost@shop.example",
    "",
  ])("answers nothing to a browser that was sent here under the name “%s”", async (name) => {
    const answer = await ask("/", [`Host: ${name}:${port}`]);
    expect(answer).toMatch(/^HTTP\/1\.1 40[03] /);
    expect(answer).not.toContain("Served");
  });

  test("says with each answer that its type is its type, and that no page may frame it", async () => {
    for (const path of ["/", "/manifest.webmanifest", "/not-there.js"]) {
      const answer = await ask(path);
      expect(answer).toMatch(/^X-Content-Type-Options: nosniff\r$/m);
      expect(answer).toMatch(/^Content-Security-Policy: frame-ancestors 'none'\r$/m);
    }
    expect(await ask("/manifest.webmanifest")).toMatch(/^Content-Type: application\/manifest\+json\r$/m);
  });

  test.each([
    "/../outside.txt",
    "/%2e%2e/outside.txt",
    "/..%2foutside.txt",
    "/..%5coutside.txt",
    "/../page-beside/outside.txt",
    "/-beside/outside.txt",
    "//outside.txt",
    "/.env",
    "/%2eenv",
    "/.git/config",
    "/./.git/config",
    "/.git%2fconfig",
    "/\0.env",
    "/%00.env",
    "/%",
    "/%e0%a4",
    "http://localhost/../outside.txt",
    "*",
  ])("gives nothing out for %j", async (path) => {
    const answer = await ask(path);
    expect(answer).toMatch(/^HTTP\/1\.1 40[04] /);
    expect(answer).not.toContain("secret");
  });

  test("lives on after requests that make no sense", async () => {
    for (const range of ["bytes=500-100", "bytes=-", "bytes=9999999-", "bytes=a-b"]) {
      await ask("/", [`Host: localhost:${port}`, `Range: ${range}`]);
    }
    expect(await statusOf("/", undefined, "POST")).toBe(405);
    expect(await statusOf("/", undefined, "DELETE")).toBe(405);
    await ask("/", ["no header at all"]);
    await ask("/?a=%&b=../../");
    expect(await statusOf("/")).toBe(200);
    expect(await statusOf("/", undefined, "HEAD")).toBe(200);
  });
});
