import { expect, it } from "vitest";
import { parseSentDocument } from "./document-sheet.ts";

const sent = (odometers: readonly number[], horizon_km: number, visit = 0): string =>
  JSON.stringify({
    by: "MK",
    document: {
      visits: odometers.map((odometer_km, i) => ({ label: `Visit ${i + 1}`, odometer_km })),
      declined: [],
      agreed: [],
      fixed: [{ remedy: "pads@front", visit }],
      horizon_km,
    },
  });

it("a plan whose visits rise to its horizon is taken", () => {
  expect("findings" in parseSentDocument("plan", sent([90_000, 105_000], 120_000, 1))).toBe(false);
});

it.each([
  [sent([90_000, 85_000], 120_000), "plan-order", "document.visits[1].odometer_km"],
  [sent([90_000, 105_000], 100_000), "plan-horizon", "document.horizon_km"],
  [sent([90_000, 105_000], 120_000, 2), "plan-fixed-visit", "document.visits"],
])("one that does not says where, what came and what was needed", (text, code, path) => {
  const parsed = parseSentDocument("plan", text);
  const [finding] = "findings" in parsed ? parsed.findings : [];
  expect(finding).toMatchObject({ code, path });
  expect(finding?.got).not.toBe("");
  expect(finding?.needed).toMatch(/^(more than|at least|one of) /);
});
