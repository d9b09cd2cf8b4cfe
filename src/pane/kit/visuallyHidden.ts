import { makeStyles } from "@fluentui/react-components";

const useStyles = makeStyles({
  hidden: {
    position: "absolute",
    width: "1px",
    height: "1px",
    margin: "-1px",
    padding: 0,
    overflow: "hidden",
    clipPath: "inset(50%)",
    whiteSpace: "nowrap",
    border: 0,
  },
});

/** Class for words that only a screen reader needs. */
export function useVisuallyHidden(): string {
  return useStyles().hidden;
}
