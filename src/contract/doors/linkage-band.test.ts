import { describe, expect, it } from "vitest";
import { makeValidInputs } from "../../../test/fuzz/valid-inputs.ts";
import { askDoor } from "../registry.ts";

type Doc = Record<string, unknown>;
interface Position {
  readonly toe_change_sd_deg: number;
  readonly camber_change_sd_deg: number;
  readonly drawn?: { readonly toe_change: { readonly mean: number; readonly sd: number } } | null;
}
interface Matched {
  readonly toe_change: { readonly before_sd_deg: number };
  readonly camber_change: { readonly before_sd_deg: number };
}

const matches = makeValidInputs().filter(({ door }) => door === "linkage.match");
const ask = (door: string, input: Doc): readonly unknown[] => {
  const answer = askDoor(door, input);
  if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
  return (answer.output as { readonly positions: readonly unknown[] }).positions;
};

describe.each(matches.map(({ layout, input }) => [layout, input as Doc] as const))("bands of a %s", (_, input) => {
  const { readings: _r, lengths: _l, points: _p, draws: _d, one_base: _b, ...corner } = structuredClone(input);
  const links = corner.links as readonly { readonly name: string }[];
  const one_base = [{ points: links.map(({ name }) => `${name}.inner`), sd_mm: { x: 3, y: 4, z: 2 } }];
  const small = { x: 0.05, y: 0.05, z: 0.03 };
  const asked: Doc = { ...corner, sd_mm: small, travels_mm: [-30, 0, 40] };

  it("hold what points measured from one base share, as a match without readings does", () => {
    const bands = ask("linkage.band", { ...asked, one_base }) as readonly Position[];
    const before = ask("linkage.match", { ...asked, one_base }) as readonly Matched[];
    const apart = ask("linkage.band", asked) as readonly Position[];
    bands.forEach((band, i) => {
      expect(band.toe_change_sd_deg).toBeCloseTo(before[i]?.toe_change.before_sd_deg ?? Number.NaN, 9);
      expect(band.camber_change_sd_deg).toBeCloseTo(before[i]?.camber_change.before_sd_deg ?? Number.NaN, 9);
    });
    expect(bands[2]?.toe_change_sd_deg).toBeGreaterThan(apart[2]?.toe_change_sd_deg ?? Number.NaN);
  });

  it("agree with drawn geometries where the errors are small, and the same seed draws the same", () => {
    const draws = { count: 400, seed: 11 };
    const [once, again] = [ask("linkage.band", { ...asked, draws }), ask("linkage.band", { ...asked, draws })];
    expect(again).toEqual(once);
    const { toe_change_sd_deg: sd, drawn } = once[2] as Position;
    expect((drawn?.toe_change.sd ?? 0) / sd).toBeGreaterThan(0.88);
    expect((drawn?.toe_change.sd ?? 0) / sd).toBeLessThan(1.12);
  });

  it("are refused for a point of a base that is not there", () => {
    const answer = askDoor("linkage.band", {
      ...asked,
      one_base: [{ points: [`${links[0]?.name}.inner`, "nowhere.outer"], sd_mm: small }],
    });
    expect("findings" in answer && answer.findings.map(({ code, path }) => `${code} ${path}`)).toEqual([
      "unknown-name one_base[0].points[1]",
    ]);
  });
});
