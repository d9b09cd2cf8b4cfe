/* Builds the local workbook and serves it on localhost. PORT chooses the port, else 3001 or the next free one. */
import { join } from "node:path";
import { needPackages, projectFolder, run, say, stop } from "./machine.mjs";

needPackages();

const folder = join(projectFolder, "dist/page");
say("Building the local workbook ...");
if (
  run(process.execPath, [
    "node_modules/webpack-cli/bin/cli.js",
    "--config-name",
    "page",
    "--stats",
    "errors-only",
  ]) !== 0
) {
  stop("The local workbook could not be built: see above.");
}

const { pageServer } = await import("./page-server.mjs");
const server = pageServer(folder);

const wanted = process.env.PORT ? Number(process.env.PORT) : undefined;
let port = wanted ?? 3001;
server.on("error", (problem) => {
  if (problem.code === "EADDRINUSE" && wanted === undefined && port < 3021) {
    server.listen(++port, "localhost");
  } else {
    stop(`Port ${port} cannot be used (${problem.code}). Choose another: PORT=3005 npm start`);
  }
});
server.on("listening", () => {
  process.stdout.write(`Brimbook is at http://localhost:${server.address().port}/ (Ctrl+C stops it)\n`);
});
server.listen(port, "localhost");
