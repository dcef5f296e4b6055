import { describe, expect, it } from "vitest";
import { makeWholeInputs } from "../../../test/fuzz/valid-whole-inputs.ts";
import { askDoor } from "../index.ts";

type Doc = Record<string, unknown>;
const request = makeWholeInputs().find(({ door }) => door === "linkage.car-balance")?.input as Doc;

function statesOf(change: Doc): readonly Doc[] {
  const answer = askDoor("linkage.car-balance", { ...request, ...change });
  if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
  return (answer.output as { states: Doc[] }).states;
}
const wheelFigure = (state: Doc | undefined, wheel: string, key: string): number =>
  (state?.[wheel] as Doc | undefined)?.[key] as number;
const findingsOf = (change: Doc) => {
  const answer = askDoor("linkage.car-balance", { ...request, ...change });
  return "findings" in answer ? answer.findings.map(({ code, path }) => [code, path]) : [];
};

describe("a whole car in a bend, at the door", () => {
  it("leans more on softer tyres, and its loads add up to its weight", () => {
    const { tyre_n_per_mm: _, ...rigidFront } = request.front as Doc;
    const { tyre_n_per_mm: __, ...rigidRear } = request.rear as Doc;
    const [soft] = statesOf({ lateral_m_per_s2: [4] });
    const [rigid] = statesOf({ lateral_m_per_s2: [4], front: rigidFront, rear: rigidRear });
    expect(soft?.roll_deg as number).toBeGreaterThan(rigid?.roll_deg as number);
    const loads = ["front_left", "front_right", "rear_left", "rear_right"].map((k) => wheelFigure(soft, k, "load_n"));
    expect(loads.reduce((a, b) => a + b)).toBeCloseTo(1600 * 9.80665, 7);
  });

  it("tells the give of bushes only where there are any", () => {
    const [giving] = statesOf({ lateral_m_per_s2: [4] });
    const [stiff] = statesOf({
      lateral_m_per_s2: [4],
      front: { ...(request.front as Doc), rubber: [], members: [] },
    });
    expect(Math.abs(wheelFigure(giving, "front_right", "bush_toe_deg"))).toBeGreaterThan(0.01);
    expect(Math.abs(wheelFigure(stiff, "front_right", "bush_toe_deg"))).toBeLessThan(1e-9);
    expect(wheelFigure(stiff, "front_right", "load_n")).toBe(wheelFigure(giving, "front_right", "load_n"));
  });

  it("brakes by the shares of its axles, and refuses shares that do not make a whole", () => {
    const shared = (front: number, rear: number) => ({
      front: { ...(request.front as Doc), brake_share: front, drive_share: 0 },
      rear: { ...(request.rear as Doc), brake_share: rear, drive_share: 1 },
    });
    const [braked] = statesOf({ lateral_m_per_s2: [2], forward_m_per_s2: -3, ...shared(0.7, 0.3) });
    expect(wheelFigure(braked, "front_left", "braking_n")).toBeCloseTo((0.7 * 1600 * 3) / 2, 8);
    expect(braked?.moved_forward_n as number).toBeGreaterThan(0);
    const [still] = statesOf({ lateral_m_per_s2: [2], ...shared(0.7, 0.3) });
    expect(wheelFigure(braked, "front_right", "bush_toe_deg")).not.toBeCloseTo(
      wheelFigure(still, "front_right", "bush_toe_deg"),
      3,
    );
    const [driven] = statesOf({ lateral_m_per_s2: [2], forward_m_per_s2: 2, ...shared(0.7, 0.3) });
    expect(wheelFigure(driven, "rear_left", "drive_n")).toBeCloseTo((1600 * 2) / 2, 8);
    expect(wheelFigure(driven, "front_left", "drive_n")).toBe(0);
    expect(findingsOf(shared(0.7, 0.4))).toEqual([["not-consistent", "rear.brake_share"]]);
  });

  it("refuses a bend no four wheels can take by itself, and a wheel that weighs more than it bears altogether", () => {
    const [standing, beyond] = statesOf({ lateral_m_per_s2: [0, 60] });
    expect(standing).toHaveProperty("roll_deg");
    expect(beyond).toEqual({ refused: { code: "beyond-fold", wheel: null } });
    expect(findingsOf({ front: { ...(request.front as Doc), unsprung_kg: 500 } })).toEqual([
      ["not-consistent", "front.unsprung_kg"],
    ]);
  });
});
