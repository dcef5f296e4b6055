import { z } from "zod";
import { type CarMotion, carMotionForm, type SheetQuestion } from "#casework";
import type { Family } from "#vehicle";

/** What the sheet of the whole car is asked with, as it stands in JSON: one motion, its unit in the key. */
export const carWire = z.strictObject({
  sheet: z.literal("car"),
  family: z.string(),
  motion: z.union([
    z.strictObject({ heave_mm: z.number() }),
    z.strictObject({ roll_deg: z.number() }),
    z.strictObject({ pitch_deg: z.number() }),
    z.strictObject({ rack_mm: z.number() }),
  ]),
});

type CarQuestion = Extract<SheetQuestion, { kind: "car" }>;
const KEYS = { heave: "heave_mm", roll: "roll_deg", pitch: "pitch_deg", rack: "rack_mm" } as const;

/** The question of a sheet of the whole car, its family found. */
export const readCar = ({ motion }: z.infer<typeof carWire>, family: Family): CarQuestion => {
  const [key = "", shown = 0] = Object.entries(motion)[0] ?? [];
  const kind = (Object.keys(KEYS) as CarMotion["kind"][]).find((one) => KEYS[one] === key) ?? "heave";
  return { kind: "car", question: { family, motion: { kind, by: carMotionForm(kind).read(shown) } as CarMotion } };
};

/** The same as it is sent. */
export const formatCar = ({ question: { family, motion } }: CarQuestion): z.input<typeof carWire> => ({
  sheet: "car",
  family: family.id,
  motion: { [KEYS[motion.kind]]: carMotionForm(motion.kind).show(motion.by) } as z.input<typeof carWire>["motion"],
});
