import { expect, test } from "vitest";
import { readForm, usualForm } from "./silhouette-form.ts";

test("a form nobody has touched makes a family", () => {
  const read = readForm(usualForm());
  expect("family" in read && read.family.front.rung).toBe("scaled");
});

test("entries reach the sheet in its own units", () => {
  const usual = usualForm();
  const read = readForm({
    ...usual,
    numbers: { ...usual.numbers, front_weight_share: "54,5", wheelbase_mm: " 2850 " },
  });
  expect("sheet" in read && [read.sheet.front_weight_share, read.sheet.wheelbase_mm]).toEqual([0.545, 2850]);
});

test("everything wrong is said at once, each at its entry", () => {
  const usual = usualForm();
  const numbers = { ...usual.numbers, wheelbase_mm: "long", kerb_mass_kg: "9000", rear_track_mm: "" };
  const read = readForm({ ...usual, numbers });
  expect("wrong" in read && Object.keys(read.wrong).toSorted()).toEqual([
    "kerb_mass_kg",
    "rear_track_mm",
    "wheelbase_mm",
  ]);
});
