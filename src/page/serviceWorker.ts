/*
 * Keeps the whole local workbook on the device, so that it opens without a network. Each build has a store of its own,
 * filled whole or not at all: a page always gets the files of one build.
 */
import { setCacheNameDetails } from "workbox-core";
import { precacheAndRoute, type PrecacheEntry } from "workbox-precaching";
import { registerRoute } from "workbox-routing";

interface WorkerScope {
  /** Both are written by the build. */
  readonly __WB_MANIFEST: PrecacheEntry[];
  readonly __WB_VERSION: string;
  skipWaiting(): Promise<void>;
  addEventListener(
    type: "activate" | "message",
    listener: (event: {
      readonly data?: { readonly type?: string };
      waitUntil(work: Promise<unknown>): void;
    }) => void,
  ): void;
}

declare const self: WorkerScope;

const PREFIX = "brimbook";

setCacheNameDetails({ prefix: PREFIX, suffix: self.__WB_VERSION });
precacheAndRoute(self.__WB_MANIFEST, { ignoreURLParametersMatching: [/./] });

/* A page of the build before, still open in another window, goes on with the files of its build. */
registerRoute(
  ({ sameOrigin }) => sameOrigin,
  async ({ request }) => (await caches.match(request)) ?? fetch(request),
);

self.addEventListener("activate", (event) => {
  event.waitUntil(dropAllButTwo());
});

self.addEventListener("message", ({ data }) => {
  if (data?.type === "SKIP_WAITING") void self.skipWaiting();
});

/** The stores come in the order they were made: this build's, and the one before. */
async function dropAllButTwo(): Promise<void> {
  const stores = (await caches.keys()).filter((name) => name.startsWith(`${PREFIX}-`));
  await Promise.all(stores.slice(0, -2).map((name) => caches.delete(name)));
}
