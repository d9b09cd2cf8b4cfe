import { documentOf, type PrintedPage } from "../../counter/print/page";

/**
 * Prints a page from a frame of its own. Where a window bars printing, as some Excel windows do, the page is offered as
 * a file to open in a browser.
 */
export function printPage(page: PrintedPage): void {
  const frame = document.createElement("iframe");
  frame.setAttribute("aria-hidden", "true");
  frame.tabIndex = -1;
  frame.style.cssText = "position:fixed;width:0;height:0;border:0;visibility:hidden";
  frame.title = page.title;
  frame.dataset.part = "printed";
  frame.srcdoc = documentOf(page);
  frame.onload = () => {
    try {
      const inside = frame.contentWindow!;
      inside.onafterprint = () => {
        frame.remove();
      };
      inside.print();
    } catch {
      saveInstead(page);
    }
  };
  document.querySelector("[data-part=printed]")?.remove();
  document.body.append(frame);
}

function saveInstead(page: PrintedPage): void {
  const address = URL.createObjectURL(new Blob([documentOf(page)], { type: "text/html" }));
  const link = document.createElement("a");
  link.href = address;
  link.download = `${page.title}.html`;
  link.click();
  setTimeout(() => {
    URL.revokeObjectURL(address);
  }, 10_000);
}
