import { z } from "zod";
import { type BodiesFile, STAND_IN_SPRING } from "#casework";
import { buildLayoutLinkage } from "#engines/linkage";
import type { Finding } from "#numeric";
import { CAR_BODY } from "#vehicle";
import { checkLayout, findUnused, layoutSheet, readLayout } from "../layout/index.ts";
import { readJson } from "../read-json.ts";
import { type Parsed, parseReading } from "../refusal.ts";
import { bodiesKeys, readLayoutElasticity } from "./bodies-schema.ts";
import { findLayoutDependence } from "./linkage-bodies.ts";
import { bodiesInput, linkageBodiesCompliance } from "./linkage-bodies-compliance.ts";
import { isNumber, isObject } from "./loose-corner.ts";

/** Of a torn rubber so much of its rates is left where a file does not say (invented, as of the templates). */
const USUAL_TORN = { low: 0.15, high: 0.4, origin: "invented" } as const;
const share = z.number().gt(0).max(1);

/** What a file says of one suspension: its layout with what is elastic in it, how well it is known, and what moves and stops. */
const bodiesFile = z.strictObject({
  ...bodiesKeys,
  sd_mm: bodiesInput.shape.sd_mm,
  torn_share: z
    .strictObject({ low: share, high: share, origin: z.string().min(1).max(80).default("from the file") })
    .default(USUAL_TORN)
    .meta({ description: "what a torn rubber still has of its rates, and where that is from" }),
  unsprung_kg: z.number().min(0).max(1e4).optional().meta({ description: "moves with the wheel; with droop_stop_mm" }),
  droop_stop_mm: z.number().min(0).max(500).optional().meta({ description: "from ride height down to the stop" }),
});

const mm = (value: number): number => value / 1000;

/** What no schema sees in a file of a layout. */
function checkBodiesFile(raw: unknown): readonly Finding[] {
  const found = linkageBodiesCompliance.check?.(raw) ?? [];
  if (!isObject(raw)) return found;
  const torn = isObject(raw.torn_share) ? raw.torn_share : {};
  const { low, high } = torn;
  const told = ["unsprung_kg", "droop_stop_mm"] as const;
  const missing = told.filter((key) => raw[key] === undefined);
  return [
    ...found,
    ...(isNumber(low) && isNumber(high) && low > high
      ? [
          {
            code: "not-consistent",
            path: "torn_share.low",
            got: `${low} to ${high}`,
            needed: "the lower share first",
            hint: "Of a torn rubber between these shares of its rates is left.",
          },
        ]
      : []),
    ...(missing.length === 1
      ? [
          {
            code: "missing-key",
            path: missing[0] ?? "",
            got: "nothing",
            needed: "unsprung_kg and droop_stop_mm together, or neither",
            hint: "Forces while the car hangs or is supported need both.",
          },
        ]
      : []),
  ];
}

/** Whether a document is a layout alone, as linkage.bodies takes it, and not one with its spring and rubber beside it. */
const isLayoutAlone = (raw: unknown): boolean =>
  isObject(raw) && raw.layout === undefined && raw.wheel !== undefined && raw.bodies !== undefined;

/** Reads a layout with its rubber, or a layout alone, from the text of a file; every finding at once. */
export const parseBodiesFile = (text: string): Parsed<BodiesFile> => {
  const reading = readJson(text);
  if (reading.readable && isLayoutAlone(reading.value)) return parseLayoutAlone(text);
  const parsed = parseReading(bodiesFile, reading, reading.readable ? checkBodiesFile(reading.value) : []);
  return "findings" in parsed ? parsed : readBodiesFile(parsed.value, text);
};

/** Any wheel load and spring will do where nothing gives. */
const STAND_IN = { spring_n_per_mm: 50, wheel_load_n: 4000 } as const;
/** The spring that stands in runs so far straight up from the wheel centre, mm. */
const STAND_IN_LENGTH = 300;

/** A layout alone as a rigid linkage: a spring that is not drawn stands in where it has none. */
function parseLayoutAlone(text: string): Parsed<BodiesFile> {
  const reading = readJson(text);
  const found = reading.readable ? checkLayout(reading.value, "", "left") : [];
  const parsed = parseReading(
    layoutSheet,
    reading,
    found.map((finding) => ({ ...finding, path: finding.path.replace(/^\./, "") })),
  );
  if ("findings" in parsed) return parsed;
  const { value: layout } = parsed;
  const [x, y, z] = layout.wheel.centre_mm;
  const points = [
    ...layout.points,
    { name: STAND_IN_SPRING.to, at_mm: [x, y, z] as [number, number, number] },
    { name: STAND_IN_SPRING.from, at_mm: [x, y, z + STAND_IN_LENGTH] as [number, number, number] },
  ];
  const spring = {
    from: { on: CAR_BODY, at: STAND_IN_SPRING.from },
    to: { on: layout.wheel.on, at: STAND_IN_SPRING.to },
  };
  const sheet = layout.spring === undefined ? { ...layout, points, spring } : layout;
  const read = readBodiesFile(bodiesFile.parse({ layout: sheet, ...STAND_IN }), text);
  return "findings" in read ? read : { value: { ...read.value, isPlain: true, doubts: findUnused(layout, "") } };
}

/** A checked file in SI; findings where things are held twice. */
function readBodiesFile(wire: z.output<typeof bodiesFile>, text: string): Parsed<BodiesFile> {
  const layout = readLayout(wire.layout, "left");
  const dependent = findLayoutDependence({ linkage: buildLayoutLinkage(layout) });
  if (dependent) return { findings: [dependent] };
  const { x, y, z } = wire.sd_mm ?? { x: 0, y: 0, z: 0 };
  return {
    value: {
      text,
      isPlain: false,
      layout,
      doubts: findUnused(wire.layout, "layout"),
      note: wire.layout.note ?? "",
      elasticity: readLayoutElasticity(wire, layout, "left"),
      sd: [mm(x), mm(y), mm(z)],
      rateSd: Object.fromEntries(
        wire.rubber.map(({ part, end, rate_sd_share }) => [end ? `${part}.${end}` : part, rate_sd_share]),
      ),
      tornShare: wire.torn_share,
      held:
        wire.unsprung_kg === undefined || wire.droop_stop_mm === undefined
          ? null
          : { unsprungMass: wire.unsprung_kg, droop: mm(wire.droop_stop_mm) },
    },
  };
}
