import { createServer } from "node:http";
import sirv from "sirv";

/** Names by which only this machine itself is reached. Another name means that a foreign site asks through a browser. */
const OWN_NAMES = new Set(["localhost", "127.0.0.1", "[::1]"]);

const HEADERS = {
  "X-Content-Type-Options": "nosniff",
  "Content-Security-Policy": "frame-ancestors 'none'",
  "Cross-Origin-Resource-Policy": "same-origin",
  "Referrer-Policy": "no-referrer",
};

/** A server for the files of one folder, for this machine alone. */
export function pageServer(folder) {
  const files = sirv(folder, { dev: true, etag: true });
  return createServer((request, response) => {
    for (const [name, value] of Object.entries(HEADERS)) response.setHeader(name, value);
    const refuse = (status, sentence) => {
      response.writeHead(status, { "Content-Type": "text/plain; charset=utf-8" }).end(`${sentence}\n`);
    };
    const { method, headers, url } = request;
    if (!isOwnName(headers.host))
      return refuse(403, "Only this machine is served. Open the address as http://localhost.");
    if (method !== "GET" && method !== "HEAD") return refuse(405, "Only GET and HEAD are answered.");
    if (!isOpenPath(url)) return refuse(404, "Not found");
    /* Files go out whole: no range can be asked for that they do not have. */
    delete headers.range;
    return files(request, response, () => refuse(404, "Not found"));
  });
}

function isOwnName(host = "") {
  return OWN_NAMES.has(host.toLowerCase().replace(/:\d*$/, ""));
}

/** Whether a path begins at the folder and has no name in it that begins with a dot. */
function isOpenPath(url) {
  try {
    const path = decodeURIComponent(url.replace(/[?#].*$/s, ""));
    return path.startsWith("/") && !/[\\/]\./.test(path) && !path.includes("\0");
  } catch {
    return false;
  }
}
