import { marked } from "marked";

/** A wide table scrolls by itself, with the keyboard too. */
const SCROLLS = '<table tabindex="0">';

/** The function reference as a page of its own, each function under its name: what Excel's formula helper links to. */
export function referencePage(markdown) {
  const renderer = new marked.Renderer();
  renderer.heading = ({ tokens, depth, text }) => {
    const anchor = text.toLowerCase().replace(/[^a-z0-9]+/g, "-");
    return `<h${depth} id="${anchor}">${marked.Parser.parseInline(tokens)}</h${depth}>\n`;
  };
  return `<!doctype html>
<html lang="en">
  <head>
    <meta charset="utf-8" />
    <meta name="viewport" content="width=device-width, initial-scale=1" />
    <meta name="color-scheme" content="light dark" />
    <title>Brimbook worksheet functions</title>
    <style>
      body { max-width: 60rem; margin: 2rem auto; padding: 0 1rem; font: 16px/1.6 system-ui, sans-serif; }
      table { border-collapse: collapse; display: block; overflow-x: auto; }
      th, td { text-align: left; vertical-align: top; padding: 0.25rem 0.75rem; border-bottom: 1px solid #8886; }
      code { font-size: 0.95em; }
      pre { overflow-x: auto; }
    </style>
  </head>
  <body>
    <main>
${marked.parse(markdown, { renderer }).replaceAll("<table>", SCROLLS)}
    </main>
  </body>
</html>
`;
}
