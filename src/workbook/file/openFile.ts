import { WorkbookProblem } from "../workbook";
import type { WorkbookContent } from "./content";
import { decodeText } from "./csv/decodeText";
import { openCsv } from "./csv/openCsv";
import { FileFault, megabytes, tooLarge } from "./fault";
import { FileWorkbook } from "./fileWorkbook";
import { LIMITS } from "./limits";
import { openOds } from "./ods/openOds";
import { Pace, type PaceOptions } from "./pace";
import { openXlsx } from "./xlsx/openXlsx";
import { PASSWORD_TODO, ZipArchive } from "./zip";

/**
 * Opens a workbook from the bytes of an .xlsx, .ods or .csv file; what it is, the bytes tell, not the name.
 *
 * @throws WorkbookProblem where it cannot be read, and the signal's reason where it was aborted
 */
export async function openFile(
  bytes: Uint8Array,
  fileName: string,
  options: PaceOptions = {},
): Promise<FileWorkbook> {
  const pace = new Pace(options);
  try {
    options.signal?.throwIfAborted();
    const content = await readContent(bytes, fileName, pace);
    pace.finish();
    return new FileWorkbook(content);
  } catch (error) {
    if (options.signal?.aborted) throw error;
    throw problemWith(fileName, error);
  }
}

async function readContent(bytes: Uint8Array, fileName: string, pace: Pace): Promise<WorkbookContent> {
  if (bytes.length === 0) throw new FileFault("it is empty", "Choose the file that holds the log.");
  if (bytes.length > LIMITS.fileBytes) throw tooLarge(megabytes(bytes.length));
  if (startsWith(bytes, ZIP)) return openArchive(new ZipArchive(bytes), pace);
  if (startsWith(bytes, OLD_OFFICE)) throw oldOfficeFault(bytes);
  if (OTHER_KINDS.some((mark) => startsWith(bytes, mark))) {
    throw new FileFault("it is no workbook and no text", CHOOSE_TODO);
  }
  const markup = markupFault(bytes);
  if (markup) throw markup;
  return openCsv(bytes, baseName(fileName).replace(/\.[^.]*$/, ""), pace);
}

async function openArchive(archive: ZipArchive, pace: Pace): Promise<WorkbookContent> {
  if (archive.has("xl/workbook.bin")) {
    throw new FileFault("it is a binary workbook (.xlsb)", "Save it as .xlsx, and open that.");
  }
  if (archive.has("[Content_Types].xml")) return openXlsx(archive, pace);
  if (archive.has("content.xml")) return openOds(archive, pace);
  throw new FileFault("it is a zip file, but no workbook", CHOOSE_TODO);
}

function problemWith(path: string, error: unknown): WorkbookProblem {
  const fault = error instanceof FileFault ? error : new FileFault("it is damaged");
  const details = error === fault ? "" : String(error);
  return new WorkbookProblem(`“${baseName(path)}” cannot be read: ${fault.reason}. ${fault.todo}`, details);
}

function baseName(path: string): string {
  return path.split(/[/\\]/).at(-1)!;
}

/** Workbooks of before 2007, and those that a password has encrypted, come in the same wrapping. */
function oldOfficeFault(bytes: Uint8Array): FileFault {
  return contains(bytes, ENCRYPTED)
    ? new FileFault("it is protected by a password", PASSWORD_TODO)
    : new FileFault("it is a workbook of the old kind (.xls)", "Save it as .xlsx, and open that.");
}

/** Text that is a page or a workbook written in tags, whatever it is named: its lines are no rows. */
function markupFault(bytes: Uint8Array): FileFault | undefined {
  const start = decodeText(bytes.subarray(0, 4096)).trimStart().toLowerCase();
  if (!start.startsWith("<")) return undefined;
  const named = MARKUP.find(([mark]) => start.includes(mark));
  return (
    named && new FileFault(`it is ${named[1]}`, "Open it in a spreadsheet, save it as .xlsx, and open that.")
  );
}

const MARKUP = [
  ["office:document", "a flat OpenDocument file (.fods)"],
  ["urn:schemas-microsoft-com:office:spreadsheet", "a workbook in the XML of 2003"],
  ['progid="excel.sheet"', "a workbook in the XML of 2003"],
  ["<html", "a web page (HTML), whatever its name says"],
  ["<table", "a web page (HTML), whatever its name says"],
  ["<!doctype html", "a web page (HTML), whatever its name says"],
  ["<?xml", "an XML file"],
] as const;

const CHOOSE_TODO = "Choose an .xlsx, .ods or .csv file.";
const ZIP = [0x50, 0x4b];
const OLD_OFFICE = [0xd0, 0xcf, 0x11, 0xe0];
/** `EncryptedPackage`, in the wrapping's two-byte letters, as far as it takes to tell. */
const ENCRYPTED = [..."Encrypted"].flatMap((letter) => [letter.charCodeAt(0), 0]);
/** PDF, PNG, JPEG, GIF, gzip. */
const OTHER_KINDS = [
  [0x25, 0x50, 0x44, 0x46],
  [0x89, 0x50, 0x4e, 0x47],
  [0xff, 0xd8, 0xff],
  [0x47, 0x49, 0x46, 0x38],
  [0x1f, 0x8b],
];

function startsWith(bytes: Uint8Array, mark: readonly number[]): boolean {
  return mark.every((byte, index) => bytes[index] === byte);
}

function contains(bytes: Uint8Array, mark: readonly number[]): boolean {
  for (let at = bytes.indexOf(mark[0]!); at >= 0; at = bytes.indexOf(mark[0]!, at + 1)) {
    if (mark.every((byte, index) => bytes[at + index] === byte)) return true;
  }
  return false;
}
