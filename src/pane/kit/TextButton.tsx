import { makeStyles, mergeClasses, tokens } from "@fluentui/react-components";
import type { ButtonHTMLAttributes } from "react";

const useStyles = makeStyles({
  button: {
    padding: "2px 0",
    font: "inherit",
    textAlign: "left",
    color: tokens.colorBrandForegroundLink,
    background: "none",
    border: "none",
    borderRadius: tokens.borderRadiusSmall,
    textDecorationLine: "underline",
    textDecorationColor: tokens.colorNeutralStroke1,
    textUnderlineOffset: "2px",
    cursor: "pointer",
    ":hover": { textDecorationColor: "currentcolor" },
    ":focus-visible": { outline: `2px solid ${tokens.colorStrokeFocus2}`, outlineOffset: "1px" },
  },
});

/** A button that reads as part of its sentence. */
export function TextButton({ className, ...props }: ButtonHTMLAttributes<HTMLButtonElement>) {
  return <button type="button" {...props} className={mergeClasses(useStyles().button, className)} />;
}
