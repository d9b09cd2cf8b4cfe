import prettier from "eslint-config-prettier";
import officeAddins from "eslint-plugin-office-addins";
import tseslint from "typescript-eslint";
import { MAY_IMPORT, PURE_ROOMS } from "./eslint.rooms.js";

const ROOMS = Object.keys(MAY_IMPORT);

/** What a pure room must not know of: the page, Node, Office, and the clock with its time zone. */
const OUTSIDE_WORLD = [
  "window",
  "document",
  "navigator",
  "localStorage",
  "fetch",
  "process",
  "Buffer",
  "console",
  "Office",
  "Excel",
  "CustomFunctions",
  "Date",
  "setTimeout",
  "performance",
];

const roomRule = (room) => {
  const forbidden = ROOMS.filter((other) => other !== room && !MAY_IMPORT[room].includes(other));
  const patterns = [
    {
      regex: `^(\\.\\./)+(${forbidden.join("|")})/`,
      message: `The room "${room}" may import from: ${MAY_IMPORT[room].join(", ") || "no other room"}.`,
    },
  ];
  if (PURE_ROOMS.includes(room)) {
    patterns.push({
      regex: "^(?!\\.{1,2}/|#shared/|temporal-polyfill$)",
      message: `The room "${room}" is pure: no Office, React, DOM, Node or other package.`,
    });
  }
  return {
    files: [`src/${room}/**/*.{ts,tsx}`],
    rules: {
      "no-restricted-imports": ["error", { patterns }],
      ...(PURE_ROOMS.includes(room) && { "no-restricted-globals": ["error", ...OUTSIDE_WORLD] }),
    },
  };
};

export default tseslint.config(
  { ignores: ["dist/", "node_modules/", "coverage/", ".cache/", "**/*.js", "**/*.mjs"] },
  ...tseslint.configs.strict,
  {
    files: ["**/*.{ts,tsx}"],
    languageOptions: { parserOptions: { projectService: true } },
    rules: {
      "@typescript-eslint/no-non-null-assertion": "off",
      "@typescript-eslint/no-dynamic-delete": "off",
      "@typescript-eslint/no-floating-promises": "error",
      "@typescript-eslint/no-misused-promises": ["error", { checksVoidReturn: { attributes: false } }],
      "@typescript-eslint/only-throw-error": "error",
      "@typescript-eslint/switch-exhaustiveness-check": "error",
      "@typescript-eslint/consistent-type-imports": "error",
      eqeqeq: "error",
      "no-console": "error",
    },
  },
  ...Object.keys(MAY_IMPORT).map(roomRule),
  {
    files: ["src/workbook/excel/**/*.ts", "src/taskpane/**/*.{ts,tsx}"],
    plugins: { "office-addins": officeAddins },
    rules: Object.fromEntries(
      [
        "call-sync-after-load",
        "call-sync-before-read",
        "load-object-before-read",
        "no-context-sync-in-loop",
        "no-empty-load",
        "no-navigational-load",
        "no-office-initialize",
        "test-for-null-using-isNullObject",
      ].map((rule) => [`office-addins/${rule}`, "error"]),
    ),
  },
  { files: ["src/cli/**", "scripts/**", "tests/**"], rules: { "no-console": "off" } },
  prettier,
);
