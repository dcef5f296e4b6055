import { describe, expect, it } from "vitest";
import { parseSilhouette } from "#contract";
import { type Entries, entryTrouble, questionOf, readEntries, spreadTrouble } from "./match-entries.ts";

const made = parseSilhouette({ name: "Pipit", front_layout: "strut" });
if ("findings" in made) throw new Error("refused");
const { family } = made;

const whole = readEntries({ read: "352|-0.7|0.08;322|−0,95|0°02';392 mm|-0.2|" });
const ask = (change: Partial<Entries> = {}) => questionOf(family, "front-left", { ...whole, ...change });

describe("what is typed on the page of matching", () => {
  it("makes a question in SI, heights as travel from the first", () => {
    const { asked, troubles } = ask();
    expect(troubles).toEqual([]);
    expect(asked?.readings.map(({ travel }) => Math.round(travel * 1e6) / 1e6)).toEqual([0, 0.03, -0.04]);
    expect(asked?.readings.map(({ toe }) => toe)).toEqual([expect.any(Number), expect.any(Number), null]);
    expect(asked?.readings[1]?.toe).toBeCloseTo((Math.PI / 180) * (2 / 60), 12);
  });

  it.each([
    ["a text", "height", "abc", "give a number, in mm"],
    ["a negative height", "height", "-352", "give 50 to 1500 mm"],
    ["a number with an exponent", "height", "1e9", "give a number, in mm"],
    ["an angle no wheel has", "camber", "40", "give −20 to 20°"],
    ["inches", "height", "13.9 in", null],
    ["nothing", "height", "", null],
  ] as const)("%s in %s: %j is told so", (_, kind, text, said) => {
    expect(entryTrouble(kind, text, kind === "height" ? "mm" : "°")).toBe(said);
  });

  it("is never passed over: the fourth row that is wrong holds the answer up and is named", () => {
    const fourth = { height: "310", camber: "x", toe: "" };
    const { asked, whole: rows, troubles } = ask({ rows: [...whole.rows, fourth] });
    expect([asked, rows]).toEqual([null, 3]);
    expect(troubles).toEqual([{ where: "height 4, camber", said: "give a number, in °" }]);
    const half = ask({ rows: [...whole.rows, { height: "", camber: "-1", toe: "" }] });
    expect(half.troubles).toEqual([{ where: "height 4", said: "its height is still to come" }]);
    expect(ask({ bench: { nowhere: "380" } }).troubles[0]?.where).toBe("length of nowhere");
    expect(ask({ bench: { "tie-rod": "38,2 cm" } }).asked?.lengths).toEqual([{ link: "tie-rod", length: 0.382 }]);
  });

  it("says which plus or minus cannot be, and takes a blank one as usual", () => {
    expect(spreadTrouble("height", "0")).toBe("give more than 0");
    expect(spreadTrouble("bodyBase", "0")).toBeNull();
    expect(spreadTrouble("toe", "-1")).toBe("give 0 to 1000°");
    const { troubles, asked } = ask({ pm: { ...whole.pm, camber: "abc" } });
    expect([asked, troubles.map(({ where }) => where)]).toEqual([null, ["± camber"]]);
    expect(ask({ pm: { ...whole.pm, camber: " " } }).asked?.u.camber).toBeCloseTo((0.03 * Math.PI) / 180, 12);
  });
});
