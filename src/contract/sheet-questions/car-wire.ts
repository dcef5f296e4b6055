import { z } from "zod";
import { alongForm, type CarMotion, carMotionForm, type SheetQuestion } from "#casework";
import type { Finding } from "#numeric";
import type { Family } from "#vehicle";
import { isObject } from "../doors/loose-corner.ts";
import { formatFault, readFault, rubberFaultWire } from "./fault-wire.ts";
import { checkFirmerWire } from "./firmer-wire.ts";

/** What the sheet of the whole car is asked with, as it stands in JSON: one motion, its unit in the key. */
export const carWire = z.strictObject({
  sheet: z.literal("car"),
  family: z.string(),
  motion: z.union([
    z.strictObject({ heave_mm: z.number() }),
    z.strictObject({ roll_deg: z.number() }),
    z.strictObject({ pitch_deg: z.number() }),
    z.strictObject({ rack_mm: z.number() }),
    z.strictObject({ bend_g: z.number(), along_g: z.number().default(0) }),
  ]),
  changed: z.strictObject({ position: z.string(), fault: rubberFaultWire }).optional(),
});

type CarQuestion = Extract<SheetQuestion, { kind: "car" }>;
const KEYS = { heave: "heave_mm", roll: "roll_deg", pitch: "pitch_deg", rack: "rack_mm", bend: "bend_g" } as const;

/** What no schema sees of the question of a sheet of the whole car, said of a document that may be wrong elsewhere. */
export const checkCarWire = (raw: unknown): readonly Finding[] =>
  isObject(raw) && isObject(raw.changed) && isObject(raw.changed.fault) && raw.changed.fault.kind === "firmer"
    ? checkFirmerWire(raw.changed.fault, "changed.fault")
    : [];

/** The question of a sheet of the whole car, its family found. */
export const readCar = ({ motion, changed }: z.infer<typeof carWire>, family: Family): CarQuestion => {
  const [key = "", shown = 0] = Object.entries(motion)[0] ?? [];
  const kind = (Object.keys(KEYS) as CarMotion["kind"][]).find((one) => KEYS[one] === key) ?? "heave";
  const by = carMotionForm(kind).read(shown);
  const along = "along_g" in motion ? alongForm.read(motion.along_g) : 0;
  const asked: CarMotion = kind === "bend" ? { kind, by, along } : { kind, by };
  const joint = changed && { position: changed.position, fault: readFault(changed.fault) };
  return { kind: "car", question: { family, motion: asked, ...(joint === undefined ? {} : { changed: joint }) } };
};

/** The same as it is sent. */
export const formatCar = ({ question: { family, motion, changed } }: CarQuestion): z.input<typeof carWire> => ({
  sheet: "car",
  family: family.id,
  motion: {
    [KEYS[motion.kind]]: carMotionForm(motion.kind).show(motion.by),
    ...(motion.kind === "bend" ? { along_g: alongForm.show(motion.along) } : {}),
  } as z.input<typeof carWire>["motion"],
  ...(changed === undefined ? {} : { changed: { position: changed.position, fault: formatFault(changed.fault) } }),
});
