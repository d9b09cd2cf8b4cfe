import { Button, Field, Input, makeStyles } from "@fluentui/react-components";
import { useState, type FormEvent } from "react";
import type { Acceptance } from "../../../audit/judge/acceptance";
import type { Finding } from "../../../audit/judge/finding";
import { useAnnounce } from "../../kit/announce";
import { TextButton } from "../../kit/TextButton";
import type { Accepted } from "./useAccepted";

interface AcceptFormProps {
  readonly finding: Finding;
  readonly acceptance: Acceptance | undefined;
  readonly accepted: Accepted;
  /** Takes the focus when the form goes. */
  readonly onClosed: () => void;
}

const useStyles = makeStyles({
  form: { display: "grid", gridTemplateColumns: "1fr 84px", gap: "6px", padding: "6px 0 2px" },
  field: { minWidth: 0, "& input": { minWidth: 0, width: "100%" } },
  buttons: { gridColumn: "1 / -1", display: "flex", gap: "6px" },
});

/** Lets a finding stand with a reason and a name, or takes that back. */
export function AcceptForm({ finding, acceptance, accepted, onClosed }: AcceptFormProps) {
  const styles = useStyles();
  const announce = useAnnounce();
  const [open, setOpen] = useState(false);
  const [reason, setReason] = useState("");
  const [by, setBy] = useState(accepted.lastBy);
  const [asked, setAsked] = useState(false);
  const lacks = (text: string) => asked && text.trim() === "";

  if (acceptance)
    return (
      <TextButton
        onClick={() => {
          onClosed();
          accepted.takeBack(finding);
          announce("Taken back. The finding is open again.");
        }}
      >
        Take back the acceptance
      </TextButton>
    );
  if (!open)
    return (
      <TextButton
        onClick={() => {
          setOpen(true);
        }}
      >
        Accept with a reason
      </TextButton>
    );

  const close = () => {
    setOpen(false);
    onClosed();
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    setAsked(true);
    if (reason.trim() === "" || by.trim() === "") return;
    close();
    accepted.accept(finding, reason.trim(), by.trim());
    announce("Accepted. It is counted apart, and shown on reports with your reason.");
  };
  return (
    <form className={styles.form} onSubmit={submit} noValidate>
      <Field
        label="Why it can stand"
        size="small"
        className={styles.field}
        {...(lacks(reason) && { validationMessage: "Write what you found out." })}
      >
        <Input
          size="small"
          autoFocus
          value={reason}
          onChange={(_, { value }) => {
            setReason(value);
          }}
        />
      </Field>
      <Field
        label="Who says so"
        size="small"
        className={styles.field}
        {...(lacks(by) && { validationMessage: "Your initials." })}
      >
        <Input
          size="small"
          value={by}
          onChange={(_, { value }) => {
            setBy(value);
          }}
        />
      </Field>
      <div className={styles.buttons}>
        <Button size="small" type="submit">
          Accept
        </Button>
        <Button size="small" onClick={close}>
          Cancel
        </Button>
      </div>
    </form>
  );
}
