import { createContext, useCallback, useContext, useRef, useState, type ReactNode } from "react";
import { useVisuallyHidden } from "./visuallyHidden";

const Announcer = createContext<(sentence: string) => void>(() => undefined);

/** Says a sentence to a screen reader, politely. */
export function useAnnounce(): (sentence: string) => void {
  return useContext(Announcer);
}

/** Holds the pane's one live region. */
export function AnnouncerProvider({ children }: { children: ReactNode }) {
  const [sentence, setSentence] = useState("");
  const again = useRef(false);
  const hidden = useVisuallyHidden();
  // A trailing no-break space makes the same sentence, said twice, a change that is read out twice.
  const announce = useCallback((next: string) => {
    again.current = !again.current;
    setSentence(again.current ? next : `${next}\u00a0`);
  }, []);
  return (
    <Announcer.Provider value={announce}>
      {children}
      <div role="status" aria-live="polite" className={hidden}>
        {sentence}
      </div>
    </Announcer.Provider>
  );
}
