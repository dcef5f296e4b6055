import { parseSources } from "./sources.ts";

/** The register of sources as the sheets show it. */
export const sourceGroups = parseSources(SOURCES_TEXT);

/** Every key that has an entry. */
export const sourceKeys: ReadonlySet<string> = new Set(
  sourceGroups.flatMap(({ sources }) => sources.map(({ key }) => key)),
);
