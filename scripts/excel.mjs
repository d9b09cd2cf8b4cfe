/*
 * npm run excel: tries the add-in from the sources in the Excel of this computer (Windows or Mac). Builds it for
 * localhost, serves it with a certificate that this computer trusts, and tells Excel where it is. Ctrl+C takes it
 * back. Where there is no Excel it says what to do instead.
 */
import { copyFileSync, existsSync, mkdirSync, readFileSync, rmSync } from "node:fs";
import { createServer } from "node:https";
import { homedir } from "node:os";
import { join } from "node:path";
import { spawnSync } from "node:child_process";
import { needPackages, projectFolder, run, say, stop } from "./machine.mjs";

const PORT = 3000;
/** Microsoft's maker of certificates for trying add-ins; fetched by npx when it is needed, only here. */
const CERTIFICATES = "office-addin-dev-certs@3.0.0";

const folder = join(projectFolder, "dist/excel");
const manifest = join(folder, "manifest.xml");

/** How Excel is found, told of an add-in, and started; Microsoft documents both ways of telling it. */
const PLATFORMS = {
  darwin: {
    hasExcel: () => existsSync("/Applications/Microsoft Excel.app"),
    tell: () => {
      mkdirSync(macFolder, { recursive: true });
      copyFileSync(manifest, macManifest);
    },
    takeBack: () => rmSync(macManifest, { force: true }),
    start: () => run("open", ["-a", "Microsoft Excel"]),
  },
  win32: {
    hasExcel: () =>
      succeeds("reg", [
        "query",
        String.raw`HKLM\SOFTWARE\Microsoft\Windows\CurrentVersion\App Paths\excel.exe`,
      ]),
    tell: () => run("reg", ["add", DEVELOPER, "/v", addInId(), "/t", "REG_SZ", "/d", manifest, "/f"]),
    takeBack: () => run("reg", ["delete", DEVELOPER, "/v", addInId(), "/f"]),
    start: () => run("cmd", ["/c", "start", "excel"]),
  },
};
const macFolder = join(homedir(), "Library/Containers/com.microsoft.Excel/Data/Documents/wef");
const macManifest = join(macFolder, "brimbook.manifest.xml");
const DEVELOPER = String.raw`HKCU\Software\Microsoft\Office\16.0\WEF\Developer`;

const succeeds = (command, args) => spawnSync(command, args, { stdio: "ignore" }).status === 0;
const addInId = () => /<Id>(.*)<\/Id>/.exec(readFileSync(join(projectFolder, "manifest.xml"), "utf8"))[1];

const excel = PLATFORMS[process.platform];
if (!excel?.hasExcel()) {
  stop(
    [
      `There is no Excel on this computer${excel ? "" : `, and none is made for its system (${process.platform})`}.`,
      "Instead: npm start opens the local workbook, with the same pane and the same functions.",
      "For Excel on the web, or on another computer: npm run build -- --env origin=https://your.server, then docs/install.md.",
    ].join("\n"),
  );
}

needPackages();
const certificates = join(homedir(), ".office-addin-dev-certs");
if (run("npx", ["--yes", CERTIFICATES, "install"], { shell: process.platform === "win32" }) !== 0) {
  stop("No certificate for localhost could be made: see above. Excel loads add-ins over https only.");
}
if (run(process.execPath, ["scripts/build.mjs"]) !== 0) stop("The add-in could not be built: see above.");

const { default: sirv } = await import("sirv");
const pages = sirv(folder, { dev: true });
const server = createServer(
  {
    key: readFileSync(join(certificates, "localhost.key")),
    cert: readFileSync(join(certificates, "localhost.crt")),
  },
  (request, response) => pages(request, response, () => response.writeHead(404).end("Not found")),
);
server.on("error", ({ code }) =>
  stop(`Port ${PORT} cannot be used (${code}): free it and run the command again.`),
);
server.listen(PORT, "localhost", () => {
  excel.tell();
  excel.start();
  say(
    "Excel is starting. Open a workbook; Brimbook is on the Home tab, or under Add-ins. Ctrl+C ends it here.",
  );
});
process.on("SIGINT", () => {
  excel.takeBack();
  process.exit(0);
});
