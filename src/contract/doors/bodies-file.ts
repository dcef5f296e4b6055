import type { BodiesFile } from "#casework";
import { buildLayoutLinkage } from "#engines/linkage";
import { readLayout } from "../layout/index.ts";
import { readJson } from "../read-json.ts";
import { type Parsed, parseReading } from "../refusal.ts";
import { readLayoutElasticity } from "./bodies-schema.ts";
import { findLayoutDependence } from "./linkage-bodies.ts";
import { bodiesInput, linkageBodiesCompliance } from "./linkage-bodies-compliance.ts";

/** What a file says of one suspension: the question of linkage.bodies-compliance without its loads, faults and hold. */
const file = bodiesInput.pick({
  layout: true,
  spring_n_per_mm: true,
  wheel_load_n: true,
  rubber: true,
  members: true,
  sd_mm: true,
});

const mm = (value: number): number => value / 1000;

/** Reads a layout with its rubber from the text of a file; every finding at once. */
export const parseBodiesFile = (text: string): Parsed<BodiesFile> => {
  const reading = readJson(text);
  const before = reading.readable ? (linkageBodiesCompliance.check?.(reading.value) ?? []) : [];
  const parsed = parseReading(file, reading, before);
  if ("findings" in parsed) return parsed;
  const { value: wire } = parsed;
  const layout = readLayout(wire.layout, "left");
  const dependent = findLayoutDependence({ linkage: buildLayoutLinkage(layout) });
  if (dependent) return { findings: [dependent] };
  const { x, y, z } = wire.sd_mm ?? { x: 0, y: 0, z: 0 };
  return {
    value: {
      layout,
      note: wire.layout.note ?? "",
      elasticity: readLayoutElasticity(wire, layout, "left"),
      sd: [mm(x), mm(y), mm(z)],
      rateSd: Object.fromEntries(
        wire.rubber.map(({ part, end, rate_sd_share }) => [end ? `${part}.${end}` : part, rate_sd_share]),
      ),
    },
  };
};
