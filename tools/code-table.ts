import { writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { codes } from "../src/contract/codes.ts";

export const codeTablePath = fileURLToPath(new URL("../docs/codes.md", import.meta.url));

/** The page of all finding codes, written from the one table in the source. */
export const formatCodeTable = (): string => {
  const rows = Object.entries(codes)
    .toSorted(([one], [other]) => (one < other ? -1 : 1))
    .map(([code, meaning]) => `| \`${code}\` | ${meaning} |`);
  return `# Finding codes

Whatever comes from outside and cannot be used is answered by findings, all at once. Each has a \`code\`, the \`path\` of
the innermost thing that is wrong (dots and \`[i]\`; empty for the whole), what was \`got\`, what was \`needed\`, and a
\`hint\` what to try. Codes are stable; words may change.

Written from \`src/contract/codes.ts\` by \`npm run codes\`; a test holds the table against the codes the source uses.

| code | means |
|---|---|
${rows.join("\n")}
`;
};

if (process.argv[1] === fileURLToPath(import.meta.url)) writeFileSync(codeTablePath, formatCodeTable());
