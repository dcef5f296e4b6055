import { beforeAll, describe, it } from "vitest";
import { saveSheet, sheetWith } from "./chain-family.ts";
import { lookAtSheet } from "./look-at-sheet.ts";

const ID = "seen-saloon";

/** Sections of the editor that look different, by the name of their pictures. */
const PAGES = [
  { name: "editor-points", search: "part=rear&at=rear.links[4].inner_mm" },
  { name: "editor-joint", search: "part=rear&section=rubber&at=rear.links[3].inner_joint" },
  { name: "editor-wheel", search: "part=front&section=wheel" },
  { name: "editor-limits", search: "part=work&section=limits" },
  { name: "editor-identity", search: "part=car" },
  { name: "editor-file", search: "part=file" },
] as const;

describe("the sheets of the editor", () => {
  beforeAll(async () => {
    await saveSheet(sheetWith(ID, "Seen saloon", 1), { "if-none-match": "*" });
  });

  it.each(PAGES)(
    "$name: its pictures in every size and both themes, nothing for axe to find, no complaint",
    ({ name, search }) =>
      lookAtSheet({
        name,
        path: `/families/${ID}/edit?${search}`,
        pressed: [".sections", ".editor-fields", ".margin"],
      }),
  );
});
