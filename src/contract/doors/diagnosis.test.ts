import { describe, expect, it } from "vitest";
import { askDoor } from "../registry.ts";

const placesOf = (id: string, input: unknown): readonly string[] => {
  const answer = askDoor(id, input);
  return "findings" in answer ? answer.findings.map((f) => `${f.code} ${f.path}`) : [];
};
const node = (name: string, parents: string[] = [], table: unknown = [[0.2, 0.8]]) => ({
  name,
  states: ["yes", "no"],
  parents,
  table,
});
const twoRows = [
  [0.9, 0.1],
  [0.2, 0.8],
];

describe("diagnosis.network refuses", () => {
  const places = (nodes: unknown, evidence: unknown = {}): readonly string[] =>
    placesOf("diagnosis.network", { nodes, evidence });

  it.each<[string, unknown[], string[]]>([
    ["a row that does not add up to one", [node("a", [], [[0.2, 0.7]])], ["not-consistent nodes[0].table[0]"]],
    ["too few rows", [node("a"), node("b", ["a"], [[0.5, 0.5]])], ["wrong-length nodes[1].table"]],
    ["too many rows", [node("a", [], twoRows)], ["wrong-length nodes[0].table"]],
    ["a row of another length", [node("a", [], [[1]])], ["wrong-length nodes[0].table[0]"]],
    [
      "a negative probability",
      [node("a", [], [[-0.2, 1.2]])],
      ["out-of-range nodes[0].table[0][0]", "out-of-range nodes[0].table[0][1]"],
    ],
    ["a name twice", [node("a"), node("a")], ["repeated-name nodes[1].name"]],
    ["a parent that is not there", [node("a"), node("b", ["c"], twoRows)], ["unknown-name nodes[1].parents[0]"]],
    [
      "a parent twice",
      [node("a"), node("b", ["a", "a"], [...twoRows, ...twoRows])],
      ["repeated-name nodes[1].parents[1]"],
    ],
    ["a state twice", [{ ...node("a"), states: ["yes", "yes"] }], ["repeated-name nodes[0].states[1]"]],
    ["its own parent", [node("a", ["a"], twoRows)], ["cycle nodes[0].parents"]],
    [
      "a row that is no list",
      [node("a", [], [0.5, 0.5])],
      ["wrong-length nodes[0].table", "wrong-type nodes[0].table[0]", "wrong-type nodes[0].table[1]"],
    ],
  ])("%s", (_, nodes, expected) => {
    expect(places(nodes)).toEqual(expected);
  });

  it("a cycle, naming the way round", () => {
    const nodes = [
      node("x"),
      node("a", ["c"], twoRows),
      node("b", ["a"], twoRows),
      node("c", ["b", "x"], [...twoRows, ...twoRows]),
    ];
    const answer = askDoor("diagnosis.network", { nodes });
    const [finding] = "findings" in answer ? answer.findings : [];
    expect(finding).toMatchObject({ code: "cycle", path: "nodes[1].parents", got: "a to b to c to a" });
  });

  it("evidence about what is not there", () => {
    expect(places([node("rain")], { rian: "yes" })).toEqual(["unknown-name evidence.rian"]);
    expect(places([node("rain")], { rain: "yess" })).toEqual(["unknown-word evidence.rain"]);
  });

  it("evidence that cannot be: alone, and only together", () => {
    const sure = node("a", [], [[1, 0]]);
    expect(places([sure], { a: "no" })).toEqual(["impossible-evidence evidence.a"]);
    const same = node(
      "b",
      ["a"],
      [
        [1, 0],
        [0, 1],
      ],
    );
    expect(places([node("a"), same], { a: "yes", b: "no" })).toEqual(["impossible-evidence evidence"]);
    expect(places([node("a"), same], { a: "yes", b: "yes" })).toEqual([]);
  });

  it("a network too tangled to sum", () => {
    const roots = Array.from({ length: 24 }, (_, i) => node(`r${i}`));
    const pairs = roots.flatMap((a, i) =>
      roots.slice(0, i).map((b) => node(`${a.name}+${b.name}`, [a.name, b.name], [...twoRows, ...twoRows])),
    );
    expect(places([...roots, ...pairs], Object.fromEntries(pairs.map((p) => [p.name, "yes"])))).toEqual([
      "too-tangled nodes",
    ]);
    expect(
      places([...roots.slice(0, 12), ...pairs.filter((p) => p.parents.every((r) => Number(r.slice(1)) < 12))]),
    ).toEqual([]);
  });

  it("everything at once", () => {
    expect(
      places(
        [
          {
            ...node(
              "a",
              ["z"],
              [
                [0.5, 0.4],
                [Number.NaN, 1],
              ],
            ),
            colour: 1,
          },
        ],
        { q: "yes" },
      ),
    ).toEqual([
      "unknown-name nodes[0].parents[0]",
      "not-consistent nodes[0].table[0]",
      "unknown-name evidence.q",
      "not-a-number nodes[0].table[1][0]",
      "unknown-key nodes[0].colour",
    ]);
  });
});

describe("diagnosis.suspects", () => {
  const question = {
    causes: [
      { id: "link", prior: 0.2 },
      { id: "bush", prior: 0.1 },
    ],
    signs: [
      { id: "clunk", leak: 0.05, strengths: { link: 0.5, bush: 0.8 } },
      { id: "moves", leak: 0.02, strengths: { link: 0.95 } },
    ],
    complaint: ["clunk"],
    looks: [{ id: "shake", minutes: 3, signs: ["moves"] }],
  };

  it("answers with suspects, remainder and the next look", () => {
    const answer = askDoor("diagnosis.suspects", question);
    expect(answer).toMatchObject({
      output: { suspects: [{ cause: "link" }, { cause: "bush" }], looks: [{ id: "shake", safety: false }], stop: null },
    });
    const { suspects, two_at_once, something_else } = (
      answer as { output: { suspects: { cures: number }[]; two_at_once: number; something_else: number } }
    ).output;
    expect(suspects.reduce((sum, s) => sum + s.cures, two_at_once + something_else)).toBeCloseTo(1, 12);
  });

  it("refuses everything at once", () => {
    const wrong = {
      ...question,
      causes: [...question.causes, { id: "bush", prior: 2 }],
      signs: [...question.signs, { id: "hum", leak: 0.1, strengths: { tyre: 0.5 } }],
      present: ["clunk", "whistle"],
      looks: [{ id: "shake", minutes: 0, signs: ["move"] }],
    };
    expect([...placesOf("diagnosis.suspects", wrong)].sort()).toEqual([
      "out-of-range causes[2].prior",
      "out-of-range looks[0].minutes",
      "repeated-name causes[2].id",
      "repeated-name present[0]",
      "unknown-name looks[0].signs[0]",
      "unknown-name present[1]",
      "unknown-name signs[2].strengths.tyre",
    ]);
  });

  it("refuses what cannot be seen under the model", () => {
    const signs = [{ id: "clunk", leak: 0, strengths: {} }];
    expect(placesOf("diagnosis.suspects", { ...question, signs, looks: [] })).toEqual([
      "impossible-evidence complaint",
    ]);
  });

  it("refuses more signs at once than the sums can hold", () => {
    const signs = Array.from({ length: 20 }, (_, i) => ({
      id: `s${i}`,
      leak: 0.1,
      strengths: { link: 0.5, bush: 0.5 },
    }));
    const asked = { ...question, signs, complaint: ["s0"], present: signs.slice(1, 16).map((s) => s.id), looks: [] };
    expect(placesOf("diagnosis.suspects", asked)).toEqual(["wrong-length present"]);
  });
});
