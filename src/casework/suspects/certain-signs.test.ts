import { expect, test } from "vitest";
import type { PositionKind } from "#vehicle";
import type { SymptomEntry } from "../cases/documents.ts";
import type { SignName } from "../cases/look.ts";
import type { PlaceFinding } from "../cases/place-finding.ts";
import { signsFor } from "../cases/signs.ts";
import { causes } from "./cause-table.ts";
import { certainSigns } from "./certain-signs.ts";
import { findSuspects } from "./visit-suspects.ts";

test("each sign that is a cause itself can be seen at a place of that cause", () => {
  for (const [id, signs] of Object.entries(certainSigns)) {
    const cause = causes.find((c) => c.id === id);
    expect(cause, id).toBeDefined();
    const offered = (cause?.kinds ?? []).flatMap((kind) => signsFor(kind as PositionKind));
    for (const sign of signs) expect(offered, id).toContain(sign);
  }
});

const place = "front-left/tension-link/inner-bush";
const seen = (sign: SignName, grade: PlaceFinding["grade"]) =>
  ({
    place,
    kind: "bush",
    axle: "front",
    side: "left",
    label: place,
    found: sign,
    grade,
    reasons: [],
    looks: { signs: [sign] },
  }) as unknown as PlaceFinding;
const pulls = { symptom: "pulls-under-braking", side: "unknown", axle: "unknown" } as unknown as SymptomEntry;
const suspectOf = (finding: PlaceFinding) => {
  const suspect = findSuspects([pulls], [finding]).suspects.find(({ cause }) => cause === "front-lower-bush");
  if (suspect === undefined) throw new Error("not suspected");
  return suspect;
};

test("a web seen torn is there as good as certainly, a crack only likely", () => {
  const torn = suspectOf(seen("web-torn", 3));
  const cracked = suspectOf(seen("deep-cracks", 2));
  expect(torn.there).toBeGreaterThan(0.99);
  expect(torn.basis.certain).toBe(true);
  expect(cracked.there).toBeLessThan(0.95);
  expect(cracked.there).toBeGreaterThan(cracked.basis.prior);
  expect(cracked.basis.certain).toBe(false);
});
