/*
 * What a command needs on this machine, and getting it: the npm packages, and for some tests Chromium and
 * LibreOffice. Uses Node alone, so that it runs on a fresh clone.
 */
import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

export const projectFolder = dirname(dirname(fileURLToPath(import.meta.url)));

const lock = join(projectFolder, ".cache/install.lock");

/** Installs the npm packages when they are missing or older than the lock file; two commands started at once, once. */
export function needPackages() {
  if (packagesAreHere()) return;
  takeLock();
  try {
    if (!packagesAreHere()) installPackages();
  } finally {
    rmSync(lock, { force: true });
  }
}

function packagesAreHere() {
  const installed = join(projectFolder, "node_modules", ".package-lock.json");
  const wanted = join(projectFolder, "package-lock.json");
  return existsSync(installed) && statSync(installed).mtimeMs >= statSync(wanted).mtimeMs;
}

function installPackages() {
  say("Installing the npm packages (a few minutes the first time) ...");
  if (run("npm", ["ci", "--no-audit", "--no-fund"]) !== 0) {
    rmSync(lock, { force: true });
    stop("The npm packages could not be installed: see above. Check the network and run the command again.");
  }
}

/** A file that holds the process's number. One that was left by a process that is gone counts for nothing. */
function takeLock() {
  mkdirSync(dirname(lock), { recursive: true });
  for (let waits = 0; ; waits++) {
    try {
      writeFileSync(lock, String(process.pid), { flag: "wx" });
      return;
    } catch (error) {
      if (error.code !== "EEXIST") throw error;
    }
    if (!holderLives()) rmSync(lock, { force: true });
    else {
      if (waits === 0) say("Another command installs the npm packages: waiting for it ...");
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 500);
    }
  }
}

function holderLives() {
  try {
    const holder = Number(readFileSync(lock, "utf8"));
    /* Empty for a moment: made, and its number not yet written. */
    if (holder === 0) return Date.now() - statSync(lock).mtimeMs < 10_000;
    process.kill(holder, 0);
    return true;
  } catch (error) {
    return error.code === "EPERM";
  }
}

const programs = {
  chromium: {
    name: "Chromium",
    package: "chromium",
    paths: ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"],
  },
  libreoffice: {
    name: "LibreOffice Calc",
    package: "libreoffice-calc",
    paths: ["/usr/bin/soffice", "/usr/bin/libreoffice"],
  },
};

/**
 * The path of a program, installed through apt where that is possible; `undefined` where it is not, in which case
 * the reason was said.
 */
export function needProgram(key) {
  const program = programs[key];
  const found = () => program.paths.find((path) => existsSync(path));
  if (found()) return found();
  if (!existsSync("/usr/bin/apt-get") || process.getuid?.() !== 0) {
    say(
      `${program.name} is not here and can only be installed by an administrator (apt-get install ${program.package}).`,
    );
    return undefined;
  }
  say(`Installing ${program.name} (apt-get install ${program.package}) ...`);
  const quietly = {
    env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" },
    stdio: ["ignore", "ignore", "inherit"],
  };
  if (run("apt-get", ["update", "-qq"], quietly) !== 0)
    say("apt-get update failed; trying with the list that is here.");
  run("apt-get", ["install", "-y", "-qq", "--no-install-recommends", program.package], quietly);
  if (!found()) say(`${program.name} could not be installed.`);
  return found();
}

/** Runs a command in the project's folder and answers its exit code. */
export function run(command, args, options = {}) {
  const result = spawnSync(command, args, { cwd: projectFolder, stdio: "inherit", ...options });
  if (result.error) say(`${command} could not be started: ${result.error.message}`);
  return result.status ?? 1;
}

export function say(sentence) {
  process.stderr.write(`${sentence}\n`);
}

export function stop(sentence) {
  say(sentence);
  process.exit(1);
}
