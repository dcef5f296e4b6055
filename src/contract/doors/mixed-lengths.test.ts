import { describe, expect, it } from "vitest";
import { checkLayoutLengths, checkMixedLengths } from "./mixed-lengths.ts";

describe("joints in metres beside a wheel in millimetres", () => {
  const wheel = { centre_mm: [0, 760, 310] };
  it("are told, and only they", () => {
    const links = [
      { inner_mm: [0.12, 0.35, 0.19], outer_mm: [5, 740, 190] },
      { inner_mm: [-120, 350, 2], outer_mm: [0, 0, 0] },
    ];
    const [only, ...others] = checkMixedLengths({ wheel, links });
    expect(others).toEqual([]);
    expect(only).toMatchObject({ path: "links[0].inner_mm" });
    expect(only?.hint).toMatch(/\[120, 350, 190\]/);
  });
});

describe("a wheel in metres", () => {
  const links = [{ inner_mm: [120, 350, 190], outer_mm: [5, 740, 190] }];
  it("is told at its centre, whatever the joints stand in", () => {
    for (const joints of [links, [{ inner_mm: [0.12, 0.35, 0.19], outer_mm: [0.005, 0.74, 0.19] }]]) {
      const [only, ...others] = checkMixedLengths({ wheel: { centre_mm: [0, 0.775, 0.312] }, links: joints });
      expect(others).toEqual([]);
      expect(only).toMatchObject({ path: "wheel.centre_mm", code: "unit-mixed" });
      expect(only?.hint).toMatch(/\[0, 775, 312\]/);
    }
  });

  it("is told at its radius beside a centre in millimetres", () => {
    const found = checkMixedLengths({ wheel: { centre_mm: [0, 775, 312], loaded_radius_mm: 0.31 }, links });
    expect(found.map(({ path }) => path)).toEqual(["wheel.loaded_radius_mm"]);
    expect(checkMixedLengths({ wheel: { centre_mm: [0, 775, 312], loaded_radius_mm: 310 }, links })).toEqual([]);
  });
});

describe("inches and centimetres", () => {
  const centre_mm = [0, 775, 312];
  const joints = [
    [120, 350, 190],
    [5, 740, 190],
    [-40, 600, 850],
  ] as const;
  const turned = (by: number) => joints.map((p) => p.map((c) => c / by));

  it.each([
    ["inches", 25.4],
    ["centimetres", 10],
  ])("a joint in %s is told beside a wheel in millimetres, with where it then stands", (name, by) => {
    for (const [i, inner_mm] of turned(by).entries()) {
      const [only, ...others] = checkMixedLengths({ wheel: { centre_mm }, links: [{ inner_mm, outer_mm: joints[1] }] });
      expect(others).toEqual([]);
      expect(only).toMatchObject({ code: "unit-mixed", path: "links[0].inner_mm" });
      expect(only?.hint).toContain(`${name}: in millimetres it would be [${joints[i]?.join(", ")}]`);
    }
  });

  it.each([
    ["inches", 25.4],
    ["centimetres", 10],
  ])("a wheel or its radius in %s is told, whichever of the two it is", (name, by) => {
    const radius = checkMixedLengths({ wheel: { centre_mm, loaded_radius_mm: 306 / by } });
    expect(radius).toMatchObject([{ path: "wheel.loaded_radius_mm", hint: expect.stringContaining(name) }]);
    const wheel = { centre_mm: centre_mm.map((c) => c / by), loaded_radius_mm: 306 };
    expect(checkMixedLengths({ wheel })).toMatchObject([
      { path: "wheel.centre_mm", hint: expect.stringContaining(name) },
    ]);
  });

  it("a small car all of whose lengths agree is no mixture, nor is a joint low under the middle of a car", () => {
    const small = { centre_mm: centre_mm.map((c) => c / 25.4), loaded_radius_mm: 12 };
    const [inner_mm, outer_mm] = turned(25.4);
    expect(checkMixedLengths({ wheel: small, links: [{ inner_mm, outer_mm }] })).toEqual([]);
    const low = [{ inner_mm: [900, 40, 60], outer_mm: [0, 700, 90] }];
    expect(checkMixedLengths({ wheel: { centre_mm, loaded_radius_mm: 306 }, links: low })).toEqual([]);
  });
});

describe("points of a layout in another unit than its wheel", () => {
  const wheel = { centre_mm: [-2680, 760, 315], loaded_radius_mm: 312 };
  const places = [
    [-2480, 330, 215],
    [-2845, 690, 225],
    [-2740, 590, 640],
  ];
  const at = (key: string): string => `layout.${key}`;

  it.each([
    ["metres", 1000],
    ["inches", 25.4],
    ["centimetres", 10],
  ])("are told where they are in %s, and only they", (name, by) => {
    for (const wrong of places.keys()) {
      const points = places.map((p, i) => ({ name: `p${i}`, at_mm: i === wrong ? p.map((c) => c / by) : p }));
      const [only, ...others] = checkLayoutLengths({ wheel, points }, at);
      expect(others).toEqual([]);
      expect(only).toMatchObject({ code: "unit-mixed", path: `layout.points[${wrong}].at_mm` });
      expect(only?.hint).toContain(`${name}: in millimetres it would be [${places[wrong]?.join(", ")}]`);
    }
    const points = places.map((at_mm) => ({ at_mm }));
    const small = { ...wheel, loaded_radius_mm: 312 / by };
    expect(checkLayoutLengths({ wheel: small, points }, at)).toMatchObject([
      { path: "layout.wheel.loaded_radius_mm", hint: expect.stringContaining(name) },
    ]);
    expect(checkLayoutLengths({ wheel, points }, at)).toEqual([]);
  });
});
