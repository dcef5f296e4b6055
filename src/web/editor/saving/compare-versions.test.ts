import { describe, expect, it } from "vitest";
import { formatSheetPath } from "../model/sheet-path.ts";
import { compareVersions, settleVersions } from "./compare-versions.ts";

const base = { name: "A", front: { links: [{ name: "arm", inner_mm: [1, 2, 3] }] }, work: { parts: [{ id: "disc" }] } };
const mine = { ...base, name: "Mine", front: { links: [{ name: "arm", inner_mm: [1, 2, 9] }] } };
const theirs = { ...base, name: "Theirs", work: { parts: [{ id: "disc" }, { id: "pads" }] }, note: "new" };

describe("two versions of a sheet", () => {
  it("differ place by place; what only one side changed is chosen already", () => {
    expect(compareVersions(base, mine, theirs).map(({ path, first }) => [formatSheetPath(path), first])).toEqual([
      ["name", "mine"],
      ["front.links[0].inner_mm", "mine"],
      ["work.parts", "theirs"],
      ["note", "theirs"],
    ]);
  });

  it("are settled into one that holds what was chosen of each", () => {
    const differences = compareVersions(base, mine, theirs);
    expect(settleVersions(mine, differences, ({ first }) => first)).toEqual({
      name: "Mine",
      front: mine.front,
      work: theirs.work,
      note: "new",
    });
    expect(settleVersions(mine, differences, () => "theirs")).toEqual(theirs);
    expect(settleVersions(mine, differences, () => "mine")).toEqual(mine);
  });

  it("that say the same differ nowhere", () => expect(compareVersions(base, mine, structuredClone(mine))).toEqual([]));
});
