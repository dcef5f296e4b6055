import { expect, it } from "vitest";
import { drawGradeMark } from "./grade-mark.ts";

it("tells what nobody has looked at from what was read and is not known: hatched, and a ring with one dash", () => {
  const at = { kind: "grade", grade: null, cx: 10, cy: 10, size: 20 } as const;
  const hatched = drawGradeMark(at);
  const read = drawGradeMark({ ...at, read: true });
  expect(hatched.length).toBeGreaterThan(2);
  expect(read.map(({ kind }) => kind)).toEqual(["circle", "path"]);
  expect(read[0]).toEqual(hatched[0]);
});
