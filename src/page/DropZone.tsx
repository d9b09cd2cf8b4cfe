import { makeStyles, tokens } from "@fluentui/react-components";
import { useEffect, useState } from "react";

const useStyles = makeStyles({
  veil: {
    position: "fixed",
    inset: 0,
    zIndex: 1000,
    display: "grid",
    placeItems: "center",
    pointerEvents: "none",
    backgroundColor: tokens.colorBackgroundOverlay,
  },
  sign: {
    padding: "20px 28px",
    borderRadius: tokens.borderRadiusLarge,
    border: `2px dashed ${tokens.colorBrandStroke1}`,
    backgroundColor: tokens.colorNeutralBackground1,
    fontSize: tokens.fontSizeBase400,
  },
});

/** A file may be dropped anywhere on the page. */
export function DropZone({ onDrop }: { onDrop: (file: File) => void }) {
  const styles = useStyles();
  const [hovering, setHovering] = useState(false);

  useEffect(() => {
    const over = (event: DragEvent) => {
      if (!event.dataTransfer?.types.includes("Files")) return;
      /* Else the browser would show the file in place of the page. */
      event.preventDefault();
      event.stopPropagation();
      setHovering(true);
    };
    const away = (event: DragEvent) => {
      if (event.relatedTarget === null) setHovering(false);
    };
    const drop = (event: DragEvent) => {
      const file = event.dataTransfer?.files[0];
      setHovering(false);
      if (!file) return;
      event.preventDefault();
      event.stopPropagation();
      onDrop(file);
    };
    const early = { capture: true };
    window.addEventListener("dragover", over, early);
    window.addEventListener("dragleave", away, early);
    window.addEventListener("drop", drop, early);
    return () => {
      window.removeEventListener("dragover", over, early);
      window.removeEventListener("dragleave", away, early);
      window.removeEventListener("drop", drop, early);
    };
  }, [onDrop]);

  return hovering ? (
    <div className={styles.veil}>
      <div className={styles.sign}>Drop the file to open it</div>
    </div>
  ) : null;
}
