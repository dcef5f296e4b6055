import { describe, expect, it } from "vitest";
import { demoSheetText, type Edit, editSheet } from "../../../test/family-sheets/edit-sheet.ts";
import { type Slip, slips } from "../../../test/family-sheets/slips.ts";
import { checkFamily, familyCodes, parseFamilyText, parseKeptFamilyText } from "./index.ts";

const ouzelText = demoSheetText("ouzel-saloon");
const ouzel: unknown = JSON.parse(ouzelText);

const findingsOf = ({ sheet, edits }: Slip) =>
  checkFamily(editSheet(sheet ? JSON.parse(demoSheetText(sheet)) : ouzel, edits));
const said = (findings: readonly { readonly code: string; readonly path: string }[]): string[] =>
  findings.map(({ code, path }) => `${code} ${path}`);

describe("a family sheet with one slip", () => {
  it.each(slips)("$code is said at $path", (slip) => {
    const findings = findingsOf(slip);
    expect(said(findings)).toContain(`${slip.code} ${slip.path}`);
    const finding = findings.find(({ code, path }) => code === slip.code && path === slip.path);
    expect(finding?.needed).toMatch(slip.needed ?? /./);
    expect(finding?.got).toMatch(slip.got ?? /./);
    expect(finding?.hint).toMatch(slip.hint ?? /./);
  });

  it("is tried for every code of the sheet that is not said of files or silhouettes", () => {
    // Those of bodies: test/casework/axle-of-bodies.test.ts.
    const elsewhere = ["file-too-large", "no-template", "tracks-too-different", "bodies-against-axle", "bodies-name"];
    const tried = new Set([...slips.map(({ code }) => code), ...elsewhere]);
    expect(Object.keys(familyCodes).filter((code) => !tried.has(code))).toEqual([]);
    expect([...tried].filter((code) => !Object.hasOwn(familyCodes, code))).toEqual([]);
  });

  it("names the nearest where a name is misspelt", () => {
    const edits: Edit[] = [
      { set: "life[0].position", to: "front/lower-arm/rear-bsh" },
      { set: "rear.spring.seat.link", to: "spring-lnk" },
    ];
    expect(checkFamily(editSheet(ouzel, edits.slice(0, 1)))[0]?.hint).toBe("The nearest is front/lower-arm/rear-bush.");
    expect(checkFamily(editSheet(ouzel, edits.slice(1)))[0]?.hint).toBe("The nearest is spring-link.");
  });

  it("measures no point from a wheel that is in doubt itself", () => {
    const findings = checkFamily(editSheet(ouzel, [{ set: "rear.wheel.centre_mm[2]", to: 1318 }]));
    expect(said(findings)).toEqual(["loaded-radius-too-large rear.wheel.centre_mm[2]"]);
  });

  it("says of a figure in another unit only that, not that it is out of range or at odds with others as well", () => {
    const findings = checkFamily(editSheet(ouzel, [{ set: "kerb_mass_kg", to: 1.56 }]));
    expect(said(findings)).toEqual(["looks-like-tonnes kerb_mass_kg"]);
    expect(findings[0]?.hint).toBe("In kilograms this would be 1560.");
  });
});

describe("a family sheet with many slips", () => {
  it("has them all said at once, of form and of sense, front and rear", () => {
    const sheet = editSheet(ouzel, [
      { set: "front.links[0].iner_joint", copyOf: "front.links[0].inner_joint" },
      { remove: "front.links[0].inner_joint" },
      { set: "front.spring.rate_n_per_m", to: 54_000 },
      { remove: "front.spring.rate_n_per_mm" },
      { set: "front.brake_share", to: 1.4 },
      { set: "front.links[2].inner_joint.radial_n_per_mm", to: 0 },
      { set: "rear.links[0].inner_joint.radial_n_per_mm", to: -5 },
      { set: "rear.links[4].outer_mm", copyOf: "rear.links[4].inner_mm" },
      { set: "rear.wheel.camber_deg", to: "minus one" },
      { remove: "rear.damper" },
      { set: "life[0].low_km", to: 200_000 },
    ]);
    expect(said(checkFamily(sheet)).sort()).toEqual([
      "key-unit front.spring.rate_n_per_m",
      "life-band-not-rising life[0].middle_km",
      "missing-key front.spring.rate_n_per_mm",
      "missing-key rear.damper",
      "out-of-range front.brake_share",
      "out-of-range front.links[2].inner_joint.radial_n_per_mm",
      "out-of-range rear.links[0].inner_joint.radial_n_per_mm",
      "unknown-key front.links[0].iner_joint",
      "wrong-type rear.wheel.camber_deg",
      "zero-length-link rear.links[4].outer_mm",
    ]);
  });
});

describe("a file that is no family sheet", () => {
  const codesOf = (text: string): string[] => {
    const parsed = parseFamilyText(text);
    return "findings" in parsed ? parsed.findings.map(({ code }) => code) : ["read"];
  };
  const withMass = (figure: string): string => ouzelText.replace('"kerb_mass_kg": 1560', `"kerb_mass_kg": ${figure}`);

  it("is refused where it is larger than any sheet, before it is read", () => {
    expect(codesOf(`[${"1,".repeat(4_100_000)}1]`)).toEqual(["file-too-large"]);
  });

  it("is refused where it breaks off, says nothing, or is another document", () => {
    expect(codesOf(ouzelText.slice(0, 900))).toEqual(["not-json"]);
    expect(codesOf("")).toEqual(["no-input"]);
    expect(codesOf('"a family"')).toEqual(["wrong-type"]);
    expect(codesOf(ouzelText.replace("underbench-family-1", "underbench-family-9"))).toEqual(["unknown-word"]);
  });

  it("is refused where a figure is NaN, infinite or huge", () => {
    expect(codesOf(withMass("1560"))).toEqual(["read"]);
    expect(codesOf(withMass("NaN"))).toEqual(["not-a-number"]);
    expect(codesOf(withMass("1e999"))).toEqual(["number-too-large"]);
    expect(codesOf(withMass("1e12"))).toEqual(["number-too-large"]);
  });
});

describe("a sheet that was kept before a check of how its wheels move came", () => {
  const text = (...edits: Edit[]): string => JSON.stringify(editSheet(JSON.parse(ouzelText), edits));
  const doubtful = text({ set: "rear.droop_stop_mm", to: 390 });
  const broken = text({ copyOf: "rear.links[2].inner_mm", set: "rear.links[4].inner_mm" });

  it("still opens, is not taken as a new one, and says to a new one why", () => {
    expect(parseKeptFamilyText(doubtful)).toMatchObject({ family: { id: "ouzel-saloon" } });
    expect(parseFamilyText(doubtful)).toMatchObject({ findings: [{ code: "stop-beyond-fold" }] });
  });

  it("does not open where it cannot be computed with", () => {
    expect(parseKeptFamilyText(broken)).toMatchObject({ findings: [{ code: "coincident-points" }] });
  });
});
