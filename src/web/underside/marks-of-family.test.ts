import { expect, test } from "vitest";
import { sampleFamily } from "../../../test/samples/sample-family.ts";
import { positionsOf } from "../car.ts";
import { readFamilyMarks, statesOf } from "./marks-of-family.ts";

const positions = positionsOf(sampleFamily);
const idOf = (kind: string): string => {
  const found = positions.find((position) => position.kind === kind && position.side === "left");
  if (found === undefined) throw new Error(`the sample family has no ${kind}`);
  return found.id;
};
const [tyre, damper] = [idOf("tyre"), idOf("damper")];

test("marks that cannot stand at their place are said and left out", () => {
  const { marks, unread } = readFamilyMarks(
    sampleFamily,
    positions,
    `${tyre}:torn-3~${damper}:seen-lip~nobody/here:sound~${damper}:seen-no-damping`,
  );
  expect([...marks.keys()]).toEqual([damper]);
  expect(unread).toEqual([tyre, "nobody/here"]);
});

test("a sign is drawn with its grade and in words; what could not be reached stays unseen", () => {
  const { marks } = readFamilyMarks(sampleFamily, positions, `${damper}:seen-no-damping~${tyre}:seen-cannot-reach`);
  expect(statesOf(positions, marks)).toEqual({ [damper]: { grade: 3, sign: "no damping" } });
});

test("a firmer part by its hardness stands at a bush and is drawn with that of the new part; a ball joint has none", () => {
  const [bush, ball] = [idOf("bush"), idOf("ball-joint")];
  const { marks, unread } = readFamilyMarks(
    sampleFamily,
    positions,
    `${bush}:firmer-shore-55-65~${ball}:firmer-shore-55-65`,
  );
  expect(statesOf(positions, marks)).toEqual({ [bush]: { grade: 0, sign: "firmer, 65 Shore A" } });
  expect(unread).toEqual([ball]);
});
