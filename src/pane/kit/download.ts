const XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
/** Browsers read the bytes some time after the click. */
const KEPT_MS = 60_000;

/** Hands the bytes of an .xlsx file to the user's downloads. */
export function download(bytes: Uint8Array, fileName: string): void {
  const address = URL.createObjectURL(new Blob([bytes as Uint8Array<ArrayBuffer>], { type: XLSX }));
  const link = document.createElement("a");
  link.href = address;
  link.download = fileName;
  link.click();
  setTimeout(() => {
    URL.revokeObjectURL(address);
  }, KEPT_MS);
}
