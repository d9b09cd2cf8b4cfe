import { cleanup, configure, fireEvent, render, screen, within } from "@testing-library/react";
import { afterEach, vi } from "vitest";
import { Pane, type PaneProps } from "../../src/pane/Pane";

// What jsdom leaves out and Fluent or the pane asks for.
vi.stubGlobal(
  "ResizeObserver",
  class {
    observe() {}
    unobserve() {}
    disconnect() {}
  },
);
Element.prototype.scrollIntoView = () => undefined;

// Nothing here measures time: a busy machine may take as long as it likes.
configure({ asyncUtilTimeout: 30_000 });
vi.setConfig({ testTimeout: 120_000 });

afterEach(cleanup);

export function showPane(props: Omit<PaneProps, "appearance">) {
  return render(<Pane appearance="light" {...props} />);
}

/** A press as a person makes it: the focus goes there first. */
export function press(name: string | RegExp, inside = screen.getByRole("main")): void {
  const button = within(inside).getByRole("button", { name });
  button.focus();
  fireEvent.click(button);
}

/** Waits for the check, which runs by itself. */
export async function checkTheLog(): Promise<void> {
  await screen.findByRole("heading", { level: 2, name: /finding|Nothing found/ });
}
