import { useEffect, useRef, useState } from "react";
import { Workbox } from "workbox-window";

/** A page that stays open for days asks this often for a newer version. */
const HOUR_MS = 3_600_000;

export interface NewVersion {
  readonly isHere: boolean;
  /** Opens the page anew, in the newer version. */
  readonly reload: () => void;
}

/** Has the page kept on the device for when there is no network, and tells when a newer version of it has come. */
export function useNewVersion(): NewVersion {
  const [isHere, setHere] = useState(false);
  const keeper = useRef<Workbox>(undefined);

  useEffect(() => {
    /* Browsers keep pages only of safe origins: https, and the machine itself. */
    if (!("serviceWorker" in navigator) || keeper.current) return;
    const worker = (keeper.current = new Workbox("service-worker.js", { updateViaCache: "none" }));
    const come = () => {
      setHere(true);
    };
    worker.addEventListener("waiting", come);
    worker.addEventListener("controlling", ({ isUpdate, isExternal }) => {
      if (isUpdate || isExternal) come();
    });
    /* Without a network there is no newer version; and where the browser keeps nothing, the page works as it is. */
    const ask = () => void worker.update().catch(() => undefined);
    void worker
      .register()
      .then(() => {
        setInterval(ask, HOUR_MS);
        window.addEventListener("online", ask);
      })
      .catch(() => undefined);
  }, []);

  const reload = () => {
    const again = () => {
      window.location.reload();
    };
    void navigator.serviceWorker.getRegistration().then((registration) => {
      if (!registration?.waiting) return again();
      navigator.serviceWorker.addEventListener("controllerchange", again, { once: true });
      keeper.current!.messageSkipWaiting();
    });
  };

  return { isHere, reload };
}
