import { describe, expect, it } from "vitest";
import { holdAgain, passOver, sayTaught, signOver } from "./hand-over-changes.ts";

describe("what is said at the hand-over", () => {
  it("passes a check over once, with the last reason, and lets it hold again", () => {
    const first = passOver(null, { gate: "road-test", reason: "snow", by: "A", at: "t1" });
    const second = passOver(first, { gate: "road-test", reason: "ice", by: "B", at: "t2" });
    expect(second.overrides).toEqual([{ gate: "road-test", reason: "ice", by: "B", at: "t2" }]);
    expect(holdAgain(second, "road-test").overrides).toEqual([]);
  });

  it("keeps one word on each thing to be taught, and takes it back when said again", () => {
    const done = sayTaught(null, { item: "Headlamp aim", state: "done", by: "A" });
    const lookUp = sayTaught(done, { item: "Headlamp aim", state: "look-up", by: "A" });
    expect(lookUp.taught).toEqual([{ item: "Headlamp aim", state: "look-up", by: "A" }]);
    expect(sayTaught(lookUp, { item: "Headlamp aim", state: "look-up", by: "B" }).taught).toEqual([]);
  });

  it("is signed with who and when", () => {
    expect(signOver(null, "A", "t").signedBy).toBe("A");
  });
});
