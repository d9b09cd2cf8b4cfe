import { useEffect, useState } from "react";

/** What is over sooner is not worth a word. */
const LASTING_MS = 600;

/** Whether something has been so for a while. */
export function useLasting(now: boolean): boolean {
  const [lasting, setLasting] = useState(false);
  useEffect(() => {
    if (!now) return;
    const timer = setTimeout(() => {
      setLasting(true);
    }, LASTING_MS);
    return () => {
      clearTimeout(timer);
      setLasting(false);
    };
  }, [now]);
  return now && lasting;
}
