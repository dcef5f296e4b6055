import { openRecords } from "#records";
import { describeCaseStore } from "./case-store-suite.ts";
import { makeFolder } from "./data-folders.ts";

describeCaseStore("SQLite", async () => {
  const { cases, archive, close } = await openRecords(makeFolder());
  return { cases, archive, other: cases, close };
});
