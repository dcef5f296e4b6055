import type { Finding } from "#contract";

/** Findings as one JSON object that can be read and parsed: one finding to a line. */
export const formatFindingsJson = (findings: readonly Finding[]): string =>
  `{"findings": [\n${findings.map((finding) => `  ${JSON.stringify(finding)}`).join(",\n")}\n]}`;

/** Findings in words: where, what came, what was needed, what to try. */
export const formatFindings = (findings: readonly Finding[]): string =>
  findings
    .map(({ code, path, got, needed, hint }) =>
      [
        `${path === "" ? "(the whole)" : path}  [${code}]`,
        `  got     ${got}`,
        `  needed  ${needed}`,
        ...(hint === "" ? [] : [`  hint    ${hint}`]),
      ].join("\n"),
    )
    .join("\n");
