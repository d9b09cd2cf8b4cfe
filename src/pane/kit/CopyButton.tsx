import { Button, Field, Textarea } from "@fluentui/react-components";
import { useState } from "react";
import { useAnnounce } from "./announce";

interface CopyButtonProps {
  /** What is copied, as the button says it: "details", "findings". */
  readonly what: string;
  readonly text: () => string;
}

/** Copies text; where the clipboard is barred, as in some Excel windows, it shows the text to copy by hand. */
export function CopyButton({ what, text }: CopyButtonProps) {
  const announce = useAnnounce();
  const [byHand, setByHand] = useState<string>();
  const copy = async () => {
    const copied = text();
    try {
      await navigator.clipboard.writeText(copied);
      setByHand(undefined);
      announce(`Copied the ${what}.`);
    } catch {
      setByHand(copied);
    }
  };
  return (
    <>
      <Button size="small" onClick={() => void copy()}>
        Copy {what}
      </Button>
      {byHand !== undefined && (
        <Field label="The clipboard is barred here. Press Ctrl+C (⌘C on a Mac) to copy this text.">
          <Textarea
            readOnly
            rows={4}
            value={byHand}
            autoFocus
            onFocus={(event) => {
              event.target.select();
            }}
          />
        </Field>
      )}
    </>
  );
}
