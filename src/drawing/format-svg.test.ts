import { describe, expect, it } from "vitest";
import { formatSvg } from "./format-svg.ts";
import type { Mark, Scene } from "./scene.ts";

const scene = (marks: readonly Mark[]): Scene => ({
  width: 100,
  height: 50,
  title: "Bush & sleeve",
  description: "torn < sound",
  marks,
  targets: [],
});

describe("formatSvg", () => {
  it("escapes words and writes attributes as SVG has them", () => {
    const text = formatSvg(
      scene([
        { kind: "text", x: 1, y: 2, text: 'a "b" < c', style: "note", anchor: "middle", halo: true },
        { kind: "path", d: "M0 0L1 1", stroke: { colour: "ink", width: 2, dash: [3, 2], cap: "round" } },
      ]),
      { theme: "light" },
    );
    expect(text).toContain("<title>Bush &amp; sleeve</title>");
    expect(text).toContain("<desc>torn &lt; sound</desc>");
    expect(text).toContain('text-anchor="middle"');
    expect(text).toContain("a &quot;b&quot; &lt; c");
    expect(text).toContain('stroke-dasharray="3 2" stroke-linecap="round"');
    expect(text).toContain('viewBox="0 0 100 50"');
  });

  it("writes colours out for a theme and as custom properties for a page", () => {
    const marks: readonly Mark[] = [{ kind: "circle", cx: 5, cy: 5, r: 2, fill: "accent" }];
    expect(formatSvg(scene(marks), { theme: "dark" })).toContain('fill="#8C96FF"');
    expect(formatSvg(scene(marks), { theme: "css" })).toContain('fill="var(--accent)"');
  });

  it("points a hatched shape at a pattern of its own drawing", () => {
    const marks: readonly Mark[] = [{ kind: "path", d: "M0 0L1 1L0 1z", fill: "hatch-unseen" }];
    const text = formatSvg(scene(marks), { theme: "css", idPrefix: "a-" });
    expect(text).toContain('fill="url(#a-hatch-unseen)"');
    expect(text).toContain('id="a-hatch-unseen"');
  });

  it("tells every grade by its shape, not by colour alone", () => {
    const shapes = ([null, 0, 1, 2, 3, 4] as const).map((grade) =>
      formatSvg(scene([{ kind: "grade", grade, cx: 10, cy: 10, size: 20 }]), { theme: "light" }).replaceAll(
        /#[0-9A-F]{6}/g,
        "",
      ),
    );
    expect(new Set(shapes).size).toBe(6);
  });
});
