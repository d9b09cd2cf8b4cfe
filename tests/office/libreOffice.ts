import { execFile } from "node:child_process";
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { promisify } from "node:util";

const run = promisify(execFile);

/**
 * Opens bytes in LibreOffice and saves them in another format. Rejects where it cannot open them.
 *
 * @param filter as `--convert-to` takes it: `ods`, `csv`, `pdf`, `xlsx`
 */
export async function convert(bytes: Uint8Array, extension: string, filter: string): Promise<Uint8Array> {
  const folder = await mkdtemp(join(tmpdir(), "brimbook-office-"));
  try {
    const source = join(folder, `book.${extension}`);
    await writeFile(source, bytes);
    const profile = pathToFileURL(join(folder, "profile")).href;
    const out = join(folder, "out");
    const options = [
      `-env:UserInstallation=${profile}`,
      "--headless",
      "--convert-to",
      filter,
      "--outdir",
      out,
      source,
    ];
    const { stdout, stderr } = await run("soffice", options, { timeout: 100_000 });
    return await readFile(join(out, `book.${filter.split(":")[0]}`)).catch(() => {
      throw new Error(`LibreOffice did not open the file: ${stdout}${stderr}`);
    });
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
