import type { z } from "zod";
import type { Look, LookContent, StoredLook } from "#casework";
import type { lookContent, lookFields } from "./look-schema.ts";
import { readingUnits, uncertaintyKey, valueKey } from "./reading-unit.ts";

type WireContent = z.output<typeof lookContent>;
type WireFields = z.output<z.ZodObject<typeof lookFields>>;

/** A look's content in JSON. */
export type LookContentSheet = Readonly<Record<string, unknown>> & { readonly kind: LookContent["kind"] };

/** A look as it stands in JSON: keys with units. */
export interface LookSheet {
  readonly id: string;
  readonly car: string;
  readonly visit: string;
  readonly place: string;
  readonly content: LookContentSheet;
  readonly load_state: string | null;
  readonly instrument: string | null;
  readonly photo: string | null;
  readonly note: string | null;
  readonly who: string;
  readonly at: string;
}

/** A stored look in JSON. */
export interface StoredLookSheet extends LookSheet {
  readonly received_at: string;
  readonly clock_off: boolean;
}

type Reading = Extract<LookContent, { kind: "reading" }>;

/** A reading the schema has accepted: the keys of value and uncertainty end in the unit of the quantity. */
interface WireReading extends Pick<Reading, "kind" | "quantity" | "point"> {
  readonly [value: `value${string}`]: number;
  readonly [uncertainty: `u${string}`]: number;
}

const isReading = (wire: object): wire is WireReading => "kind" in wire && wire.kind === "reading";

const readReading = (wire: WireReading): Reading => {
  const { quantity, point } = wire;
  const { toInside } = readingUnits[quantity];
  /** Minus nought is nought: not every database tells them apart. */
  const read = (key: `value${string}` | `u${string}`): number => toInside(wire[key] ?? Number.NaN) + 0;
  return { kind: "reading", quantity, value: read(valueKey(quantity)), u: read(uncertaintyKey(quantity)), point };
};

const readContent = (wire: WireContent): LookContent =>
  isReading(wire) ? readReading(wire) : (wire as Exclude<LookContent, Reading>);

const formatContent = (content: LookContent): LookContentSheet => {
  if (content.kind !== "reading") return { ...content };
  const { quantity, value, u, point } = content;
  const { toOutside } = readingUnits[quantity];
  return {
    kind: "reading",
    quantity,
    [valueKey(quantity)]: toOutside(value),
    [uncertaintyKey(quantity)]: toOutside(u),
    point,
  };
};

/** A look from the JSON its schema has accepted. */
export const readLook = (wire: WireFields): Look => ({
  id: wire.id,
  car: wire.car,
  visit: wire.visit,
  place: wire.place,
  content: readContent(wire.content),
  loadState: wire.load_state,
  instrument: wire.instrument,
  photo: wire.photo,
  note: wire.note,
  who: wire.who,
  at: wire.at,
});

/** A look as JSON; readLook gives the same look back. */
export const formatLook = (look: Look): LookSheet => ({
  id: look.id,
  car: look.car,
  visit: look.visit,
  place: look.place,
  content: formatContent(look.content),
  load_state: look.loadState,
  instrument: look.instrument,
  photo: look.photo,
  note: look.note,
  who: look.who,
  at: look.at,
});

/** A stored look as JSON, with what the store knows of it; its number is the store's own and stays there. */
export const formatStoredLook = (look: Omit<StoredLook, "sequence">): StoredLookSheet => ({
  ...formatLook(look),
  received_at: look.receivedAt,
  clock_off: look.clockOff,
});
