import { Host } from "./host";
import type { ToHost } from "./messages";
import { WORKER_SLICE_MS } from "./pace";

const host = new Host((message) => {
  self.postMessage(message);
}, WORKER_SLICE_MS);

self.onmessage = ({ data }: MessageEvent<ToHost>) => {
  host.hear(data);
};
self.postMessage({ kind: "ready" });
