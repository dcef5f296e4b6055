import { describe, expect, it } from "vitest";
import { makeValidInputs } from "../../../test/fuzz/valid-inputs.ts";
import { askDoor } from "../registry.ts";
import type { MatchInput, MatchOutput } from "./linkage-match-schema.ts";

const valid = makeValidInputs().filter(({ door }) => door === "linkage.match");

function ask(input: unknown): MatchOutput {
  const answer = askDoor("linkage.match", input);
  if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
  return answer.output as MatchOutput;
}

const findings = (input: unknown): readonly (readonly [code: string, path: string])[] => {
  const answer = askDoor("linkage.match", input);
  return "findings" in answer ? answer.findings.map(({ code, path }) => [code, path] as const) : [];
};

const inputOf = (layout: string): MatchInput => {
  const found = valid.find((v) => v.layout === layout);
  if (!found) throw new Error(`no ${layout}`);
  return structuredClone(found.input) as unknown as MatchInput;
};

describe.each(valid.map(({ layout }) => layout))("%s", (layout) => {
  const input = inputOf(layout);
  const output = ask(input);

  it("comes to an end with narrower bands, none at design height", () => {
    expect(output.report.end).toBe("converged");
    expect(output.report.residual).toBeLessThan(1e-4);
    for (const { travel_mm, camber_change, toe_change } of output.positions)
      for (const change of [camber_change, toe_change]) {
        if (travel_mm === 0) expect([change.deg, change.sd_deg, change.sign_probability]).toEqual([0, 0, null]);
        else expect(change.sd_deg).toBeLessThan(change.before_sd_deg);
      }
    expect(output.settled).toBeGreaterThan(1);
    expect(output.settled).toBeLessThan(input.readings.length * 2 + 1);
  });

  it("is mirrored with the car", () => {
    const other = (p: readonly number[]): number[] => [p[0] as number, -(p[1] as number), p[2] as number];
    const { strut, trailing_arm: arm } = input;
    const right = ask({
      ...input,
      side: "right",
      links: input.links.map((l) => ({ ...l, inner_mm: other(l.inner_mm), outer_mm: other(l.outer_mm) })),
      wheel: { ...input.wheel, centre_mm: other(input.wheel.centre_mm) },
      ...(strut ? { strut: { top_mm: other(strut.top_mm), axis_point_mm: other(strut.axis_point_mm) } } : {}),
      ...(arm
        ? {
            trailing_arm: {
              bush_mm: other(arm.bush_mm),
              ...(arm.free_axis ? { free_axis: other(arm.free_axis) } : {}),
            },
          }
        : {}),
    });
    expect(right.positions).toEqual(output.positions);
    right.points.forEach(({ shift_mm }, i) => {
      const left = output.points[i]?.shift_mm ?? [0, 0, 0];
      expect(shift_mm.map((x) => x + 0)).toEqual([left[0], left[1] === 0 ? 0 : -left[1], left[2]]);
    });
  });

  it("with nothing read is linkage.band", () => {
    const { readings: _none, lengths: _no, points: _own, one_base: _base, draws: _draws, ...bare } = input;
    const { positions } = ask(bare);
    const { side, links, wheel, strut, trailing_arm, sd_mm, travels_mm } = input;
    const corner = { side, links, wheel, ...(strut ? { strut } : {}), ...(trailing_arm ? { trailing_arm } : {}) };
    const band = askDoor("linkage.band", { ...corner, sd_mm, travels_mm });
    if ("findings" in band) throw new Error(JSON.stringify(band.findings));
    const bands = (band.output as { positions: Record<string, number>[] }).positions;
    positions.forEach(({ toe_change, camber_change }, i) => {
      expect(toe_change.deg).toBe(bands[i]?.toe_change_deg);
      expect(toe_change.sd_deg).toBeCloseTo(bands[i]?.toe_change_sd_deg ?? Number.NaN, 12);
      expect(camber_change.sd_deg).toBeCloseTo(bands[i]?.camber_change_sd_deg ?? Number.NaN, 12);
    });
  });
});

describe("a match that cannot be asked", () => {
  const input = inputOf("front_five_link_open");

  it("says every name nobody knows, with the nearest", () => {
    const first = `${input.links[0]?.name}.inner`;
    const sd_mm = { x: 1, y: 1, z: 1 };
    const wrong = {
      ...input,
      points: [{ point: `${first}s`, sd_mm }],
      one_base: [{ points: [first, "nowhere.outer"], sd_mm }],
      lengths: [{ link: "no-such-link", length_mm: 300, u_mm: 1 }],
    };
    expect(findings(wrong)).toEqual([
      ["unknown-name", "points[0].point"],
      ["unknown-name", "one_base[0].points[1]"],
      ["unknown-name", "lengths[0].link"],
    ]);
  });

  it("wants an angle with its uncertainty, one at least, and no uncertainty of nought", () => {
    const readings = [
      { travel_mm: 0 },
      { travel_mm: 10, toe_deg: 0.1 },
      { travel_mm: 20, camber_deg: -1, camber_u_deg: 0 },
    ];
    expect(findings({ ...input, readings })).toEqual(
      expect.arrayContaining([
        ["missing-key", "readings[0]"],
        ["missing-key", "readings[1].toe_u_deg"],
        ["out-of-range", "readings[2].camber_u_deg"],
      ]),
    );
  });

  it("says where the linkage binds, for heights read and asked", () => {
    const [reading] = input.readings;
    const far = { ...input, readings: [{ ...reading, travel_mm: 900 }], travels_mm: [0, -900] };
    expect(findings(far)).toEqual([
      ["beyond-fold", "readings[0].travel_mm"],
      ["beyond-fold", "travels_mm[1]"],
    ]);
  });
});
