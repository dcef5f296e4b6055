import { expect, test } from "vitest";
import { parseTypedQuantity } from "../../number/parse-typed-quantity.ts";
import { unitKeys } from "../../number/written-units.ts";
import { withUnit } from "./number-pad.tsx";

test("every unit the parser takes beside the field's own has a key, and what the key types is read", () => {
  expect(unitKeys("bar")).toEqual(["psi", "kPa"]);
  expect(unitKeys("mm")).toEqual(["cm", "in"]);
  for (const field of ["bar", "mm", "N", "N·m", "°C"])
    for (const sign of unitKeys(field)) {
      const read = parseTypedQuantity(withUnit("32", sign, field), field);
      expect(read, `${field} ${sign}`).toMatchObject({ kind: "number", as: `32 ${sign}` });
    }
});

test("another unit takes the place of the one that stood there, and none stands alone", () => {
  expect(withUnit("32 psi", "kPa", "bar")).toBe("32 kPa");
  expect(withUnit("", "psi", "bar")).toBe("");
});

test("an angle is typed in degrees and minutes", () => {
  const typed = withUnit(`${withUnit("0", "°", "°")}07`, "'", "°");
  expect(typed).toBe("0°07'");
  expect(parseTypedQuantity(typed, "°")).toMatchObject({ kind: "number", as: "0°07'" });
});
