import { z } from "zod";
import type { LoadState, SignName } from "#casework";
import type { QuantityName } from "#vehicle";
import {
  freeText,
  line,
  moment,
  orNothing,
  person,
  photoHash,
  place,
  recordId,
  tableKey,
  uuidV7,
} from "./case-words.ts";
import { quantityNames, uncertaintyKey, valueKey } from "./reading-unit.ts";

/** Every sign; a sign that is new in casework must stand here too, or this does not compile. */
const signs: Readonly<Record<SignName, true>> = {
  "surface-cracks": true,
  "deep-cracks": true,
  "web-torn": true,
  "sleeve-off-centre": true,
  "no-spring-back": true,
  "oil-trace": true,
  "fluid-gone": true,
  separated: true,
  "metal-contact": true,
  "play-felt": true,
  "boot-split": true,
  "boot-perished": true,
  "film-above-seat": true,
  "film-below-seat": true,
  "wet-streams": true,
  "no-damping": true,
  "rebounds-differ": true,
  broken: true,
  crumbled: true,
  seized: true,
  stiff: true,
  "cracked-edge": true,
  "blue-spots": true,
  deposits: true,
  scored: true,
  lip: true,
  "cord-seen": true,
  bulge: true,
  "uneven-wear": true,
  feathered: true,
  cupped: true,
  "one-shoulder": true,
  corroded: true,
  wet: true,
  chafed: true,
  rough: true,
  "loose-bolt": true,
  "marks-moved": true,
  hot: true,
  "fault-stored": true,
  "cannot-reach": true,
  "out-of-place": true,
};
const loadStates: Readonly<Record<LoadState, true>> = {
  standing: true,
  hanging: true,
  supported: true,
  bench: true,
  driving: true,
};

/** A list of words as the tuple an enumeration wants. */
const wordsOf = <T extends string>(words: Readonly<Record<T, true>>): [T, ...T[]] => Object.keys(words) as [T, ...T[]];

const reading = (quantity: QuantityName) =>
  z.strictObject({
    kind: z.literal("reading"),
    quantity: z.literal(quantity),
    [valueKey(quantity)]: z.number(),
    [uncertaintyKey(quantity)]: z.number().min(0),
    point: orNothing(line),
  });

type ReadingSchema = ReturnType<typeof reading>;

/** The content of a look; a reading's keys carry the unit of its quantity. */
export const lookContent = z.discriminatedUnion("kind", [
  z.discriminatedUnion("quantity", quantityNames.map(reading) as [ReadingSchema, ...ReadingSchema[]]),
  z.strictObject({
    kind: z.literal("signs"),
    signs: z
      .array(z.enum(wordsOf(signs)))
      .min(1)
      .max(20),
  }),
  z.strictObject({ kind: z.literal("nothing-seen") }),
  z.strictObject({
    kind: z.literal("not-taken"),
    quantity: orNothing(z.enum(quantityNames as [QuantityName, ...QuantityName[]])),
  }),
  z.strictObject({ kind: z.literal("withdrawn"), look: uuidV7 }),
]);

/** Every key of a look that says what was seen; `confirmed` belongs to the sending and is not kept. */
export const lookFields = {
  id: uuidV7,
  car: recordId,
  visit: recordId,
  place,
  content: lookContent,
  load_state: orNothing(z.enum(wordsOf(loadStates))),
  instrument: orNothing(tableKey),
  photo: orNothing(photoHash),
  note: orNothing(freeText),
  who: person,
  at: moment,
};

/** A look as a client sends it. */
export const sentLook = z.strictObject({ ...lookFields, confirmed: z.boolean().default(false) });

/** A look as the store gives it out, and as it stands in an export. */
export const storedLook = z.strictObject({
  ...lookFields,
  received_at: moment,
  clock_off: z.boolean(),
});
