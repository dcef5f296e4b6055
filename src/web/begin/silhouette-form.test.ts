import { expect, test } from "vitest";
import { assumedForm, blankForm, familyAsFarAsRead, formOfSheet, keptName, readForm } from "./silhouette-form.ts";

test("a form nobody has touched makes a family", () => {
  const read = readForm(blankForm());
  expect("family" in read && read.family.front.rung).toBe("scaled");
});

test("entries reach the sheet in its own units", () => {
  const usual = blankForm();
  const read = readForm({
    ...usual,
    numbers: { ...usual.numbers, front_weight_share: "54,5", wheelbase_mm: " 2850 " },
  });
  expect("sheet" in read && [read.sheet.front_weight_share, read.sheet.wheelbase_mm]).toEqual([0.545, 2850]);
});

test("the text of what is permitted is in the unit of its field", () => {
  const usual = blankForm();
  const context = { ranges: { front_weight_share: { minimum: 0.35, maximum: 0.7 } }, taken: [], rung: undefined };
  const numbers = { ...usual.numbers, front_weight_share: "90" };
  expect(readForm({ ...usual, numbers }, context)).toEqual({ wrong: { front_weight_share: "give 35 to 70 %" } });
});

test("a number that may be two is not taken for one", () => {
  const usual = blankForm();
  const wrongOf = (text: string) => {
    const read = readForm({ ...usual, numbers: { ...usual.numbers, rear_lowered_mm: text } });
    return "wrong" in read ? read.wrong.rear_lowered_mm : read.sheet.rear_lowered_mm;
  };
  expect(wrongOf("1,234")).toContain("1234 or 1.234 mm");
  expect(wrongOf("−12,5")).toBe(-12.5);
});

test("a unit may stand behind a figure, and thousands apart", () => {
  const usual = blankForm();
  const read = readForm({
    ...usual,
    numbers: {
      ...usual.numbers,
      wheelbase_mm: "2.71 m",
      front_track_mm: "156 cm",
      kerb_mass_kg: "1 510 kg",
      front_weight_share: "54 %",
    },
  });
  if (!("sheet" in read)) throw new Error(JSON.stringify(read.wrong));
  const { wheelbase_mm, front_track_mm, kerb_mass_kg, front_weight_share } = read.sheet;
  expect([wheelbase_mm, front_track_mm, kerb_mass_kg, front_weight_share]).toEqual([2710, 1560, 1510, 0.54]);
});

test("a wrong figure leaves a car to draw: the rest as typed, that one as before", () => {
  const usual = blankForm();
  const form = { ...usual, numbers: { ...usual.numbers, wheelbase_mm: "2900", kerb_mass_kg: "heavy" } };
  expect("wrong" in readForm(form)).toBe(true);
  const family = familyAsFarAsRead(form, usual);
  expect(family?.wheelbase).toBe(2.9);
  expect(family?.kerbMass).toBe(Number(assumedForm().numbers.kerb_mass_kg));
});

test("a name somebody has is told apart by a number", () => {
  expect(keptName(" Wagtail van ", ["Wagtail van"])).toBe("Wagtail van 2");
  expect(keptName("", [])).toBe("Car line without a name");
  expect(keptName("", ["Car line without a name"])).toBe("Car line without a name 2");
});

test("a form shows the entries of a sheet and reads them back", () => {
  const read = readForm({
    ...blankForm(),
    name: "Wren",
    numbers: { ...blankForm().numbers, front_weight_share: "54.5" },
  });
  if (!("sheet" in read)) throw new Error("refused");
  expect(readForm(formOfSheet(read.sheet))).toEqual(read);
});

test("everything wrong is said at once, each at its entry", () => {
  const usual = blankForm();
  const numbers = { ...usual.numbers, wheelbase_mm: "long", kerb_mass_kg: "9000", rear_track_mm: "-" };
  const read = readForm({ ...usual, numbers });
  expect("wrong" in read && Object.keys(read.wrong).toSorted()).toEqual([
    "kerb_mass_kg",
    "rear_track_mm",
    "wheelbase_mm",
  ]);
});

test("what is left blank is assumed, what is typed is not, though it be the same figure", () => {
  const blank = blankForm();
  const nothing = readForm(blank);
  const typed = readForm({ ...blank, numbers: { ...blank.numbers, kerb_mass_kg: assumedForm().numbers.kerb_mass_kg } });
  if (!("family" in nothing) || !("family" in typed)) throw new Error("refused");
  expect(Object.keys(nothing.sheet)).toEqual(["name"]);
  expect(nothing.family.assumed).toContain("kerb-mass");
  expect(typed.family.assumed).not.toContain("kerb-mass");
  expect(typed.family.assumed).toContain("rear-track");
  expect(typed.family.kerbMass).toBe(nothing.family.kerbMass);
});

test("a choice nobody has made comes back unmade", () => {
  const read = readForm({ ...blankForm(), frontLayout: "strut" });
  if (!("sheet" in read)) throw new Error("refused");
  expect(formOfSheet(read.sheet)).toMatchObject({ frontLayout: "strut", rearLayout: "", drivenAxle: "" });
});

test("a figure typed in a larger unit without saying so is told how it may have been meant", () => {
  const blank = blankForm();
  const ranges = {
    wheelbase_mm: { minimum: 1800, maximum: 4800 },
    kerb_mass_kg: { minimum: 500, maximum: 4000 },
    front_weight_share: { minimum: 0.35, maximum: 0.7 },
    front_lowered_mm: { minimum: -30, maximum: 40 },
  };
  const numbers = {
    ...blank.numbers,
    wheelbase_mm: "2,71",
    kerb_mass_kg: "1.5",
    front_weight_share: "0.56",
    front_lowered_mm: "-31",
  };
  expect(readForm({ ...blank, numbers }, { ranges, taken: [], rung: undefined })).toEqual({
    wrong: {
      wheelbase_mm: "give 1800 to 4800 mm; write 2,71 m if that is meant",
      kerb_mass_kg: "give 500 to 4000 kg; write 1.5 t if that is meant",
      front_weight_share: "give 35 to 70 %; 0.56 is 56 %",
      front_lowered_mm: "give −30 to 40 mm",
    },
  });
});
