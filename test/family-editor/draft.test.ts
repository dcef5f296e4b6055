import { describe, expect, it } from "vitest";
import { checkFamily } from "#contract";
import { demoFamilySheets } from "#demo";
import {
  beginDraft,
  changeDraft,
  editDraft,
  isChanged,
  type KeptSheet,
  redoDraft,
  undoDraft,
} from "../../src/web/editor/model/draft.ts";
import { formatSheetText, textOfDraft } from "../../src/web/editor/model/sheet-text.ts";
import { sheetValueAt, withSheetValue } from "../../src/web/editor/model/sheet-value.ts";

const kept = (sheet: unknown, text = JSON.stringify(sheet, null, 3)): KeptSheet => ({ text, sheet, version: '"1"' });
const [ouzel] = [demoFamilySheets["ouzel-saloon"]];
const TOE_LINK = ["rear", "links", 4, "inner_mm", 2] as const;

describe("a draft of a family sheet", () => {
  it.each(Object.keys(demoFamilySheets))(
    "opened and kept without a change is the same file to the letter: %s",
    (id) => {
      const text = `${JSON.stringify(demoFamilySheets[id], null, 3)}\n\n`;
      expect(textOfDraft(beginDraft(kept(JSON.parse(text), text)))).toBe(text);
    },
  );

  it("changed and changed back is the same file too", () => {
    const begun = beginDraft(kept(ouzel));
    const was = sheetValueAt(ouzel, TOE_LINK);
    const changed = editDraft(begun, TOE_LINK, 281.5);
    expect(isChanged(changed)).toBe(true);
    expect(textOfDraft(editDraft(changed, TOE_LINK, was))).toBe(begun.base.text);
  });

  it("writes a change and nothing else, and the file it writes reads back as the sheet", () => {
    const changed = editDraft(beginDraft(kept(ouzel)), TOE_LINK, 281.5);
    const read = JSON.parse(textOfDraft(changed));
    expect(read).toEqual(changed.sheet);
    expect(sheetValueAt(read, TOE_LINK)).toBe(281.5);
    const back = structuredClone(read);
    back.rear.links[4].inner_mm[2] = sheetValueAt(ouzel, TOE_LINK);
    expect(back).toEqual(ouzel);
    expect(checkFamily(read)).toEqual([]);
  });

  it.each(Object.entries(demoFamilySheets))(
    "the text of %s keeps every figure, and coordinates on one line",
    (_, sheet) => {
      const text = formatSheetText(sheet);
      expect(JSON.parse(text)).toEqual(sheet);
      expect(formatSheetText(JSON.parse(text))).toBe(text);
      expect(text).toMatch(/"inner_mm": \[-?[\d.]+, -?[\d.]+, -?[\d.]+\]/);
    },
  );

  it("takes typing in one place back as one step, and other places one by one", () => {
    let draft = beginDraft(kept(ouzel));
    for (const typed of [2, 28, 281]) draft = editDraft(draft, TOE_LINK, typed);
    draft = editDraft(draft, ["name"], "Other");
    const both = draft.sheet;
    draft = undoDraft(draft);
    expect([sheetValueAt(draft.sheet, ["name"]), sheetValueAt(draft.sheet, TOE_LINK)]).toEqual(["Ouzel saloon", 281]);
    draft = undoDraft(draft);
    expect(draft.sheet).toEqual(ouzel);
    expect(undoDraft(draft)).toBe(draft);
    draft = redoDraft(redoDraft(draft));
    expect(draft.sheet).toEqual(both);
    expect(redoDraft(draft)).toBe(draft);
  });

  it("a new change ends what could be done again", () => {
    const undone = undoDraft(editDraft(beginDraft(kept(ouzel)), ["name"], "Other"));
    expect(changeDraft(undone, { ...(undone.sheet as object), name: "Third" }, null).future).toEqual([]);
  });

  it("typing on after a step back begins a step of its own", () => {
    const typed = editDraft(editDraft(beginDraft(kept(ouzel)), ["name"], "A"), ["note"], "b");
    const again = editDraft(undoDraft(typed), ["name"], "AB");
    expect(sheetValueAt(undoDraft(again).sheet, ["name"])).toBe("A");
  });

  it("a draft that was left can be taken back to what is kept", () => {
    const left = editDraft(beginDraft(kept(ouzel)), ["name"], "Left").sheet;
    expect(undoDraft(beginDraft(kept(ouzel), left)).sheet).toEqual(ouzel);
  });
});

describe("errors that hang together", () => {
  const points = ["trailing-link.inner", "toe-link.inner"];
  const lower = [[0.1], [0, 0.2], [-0.3, 0, 0.1], [0, 0, 0, 0], [0, 0.4, 0, 0, 0]];
  const tied = withSheetValue(ouzel, ["rear", "correlation"], { points, lower });
  const begun = beginDraft(kept(tied));
  const left = (sheet: unknown) => sheetValueAt(sheet, ["rear", "correlation", "points"]);

  it("do so no longer for a point that is changed, and do again where it is changed back", () => {
    expect(left(begun.sheet)).toEqual(points);
    const moved = editDraft(begun, TOE_LINK, 281.5);
    expect(sheetValueAt(moved.sheet, ["rear", "correlation"])).toEqual({
      points: ["trailing-link.inner"],
      lower: [[0.1], [0, 0.2]],
    });
    expect(checkFamily(moved.sheet)).toEqual([]);
    expect(editDraft(moved, TOE_LINK, sheetValueAt(ouzel, TOE_LINK)).sheet).toEqual(tied);
    const renamed = editDraft(begun, ["rear", "links", 4, "name"], "control-link");
    expect(left(renamed.sheet)).toEqual(["trailing-link.inner"]);
    const surer = editDraft(begun, ["rear", "defaults", "sd_mm"], [1, 1, 1]);
    expect(sheetValueAt(surer.sheet, ["rear", "correlation"])).toBeUndefined();
  });

  it("stay as they are written where they are written themselves", () => {
    const written = editDraft(begun, ["rear", "correlation", "lower", 0, 0], 0.2);
    expect(sheetValueAt(written.sheet, ["rear", "correlation", "lower", 0, 0])).toBe(0.2);
    expect(left(written.sheet)).toEqual(points);
  });
});
