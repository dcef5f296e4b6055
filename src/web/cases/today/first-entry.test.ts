import { expect, test } from "vitest";
import { readFirstEntry } from "./first-entry.ts";

test("a plate, a name and an owner's words are told apart", () => {
  expect(readFirstEntry(" UB 204 ").kind).toBe("registration");
  expect(readFirstEntry("Ouzel saloon").kind).toBe("name");
  expect(readFirstEntry("Ouzel saloon 2014").kind).toBe("name");
  expect(readFirstEntry("it pulls to the left under braking").kind).toBe("words");
  expect(readFirstEntry("QX 1 PULLS TO THE LEFT").kind).toBe("words");
});
