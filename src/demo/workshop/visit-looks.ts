import { computeReadingUncertainty, type Look, type LookContent, quantityForms, usualInstrument } from "#casework";
import { metresFromMm, radiansFromDegrees } from "#quantity";
import { type Corner, cornerOf, type Family, positionsOf, type QuantityName } from "#vehicle";
import { demoId, momentOf } from "./demo-id.ts";
import type { Four, ReadingRows, SeenRow, VisitRow } from "./rows.ts";

const corners = ["front-left", "front-right", "rear-left", "rear-right"] as const satisfies readonly Corner[];
const PASCALS_PER_BAR = 1e5;
/** Minutes into the day of a visit's first look; one a minute. */
const FIRST_LOOK_AT = 20;

/** Says of a look where and when; the content is the caller's. */
type Put = (place: string, content: LookContent, load: Look["loadState"], note?: string) => void;

/** SI from the unit a quantity is written in. */
export function insideOf(quantity: QuantityName, shown: number): number {
  switch (quantityForms[quantity].unit) {
    case "mm":
      return metresFromMm(shown);
    case "°":
      return radiansFromDegrees(shown);
    case "bar":
      return shown * PASCALS_PER_BAR;
    default:
      return shown;
  }
}

/**
 * Every look of a visit, in the order they were made; ids and moments are the same every time.
 * @param first number of the first look among all looks of the workshop
 */
export function visitLooks(
  row: VisitRow,
  of: { readonly car: string; readonly visit: string; readonly day: string; readonly family: Family },
  first: number,
): Look[] {
  const looks: Look[] = [];
  const put: Put = (place, content, loadState, note) => {
    const minutes = FIRST_LOOK_AT + looks.length;
    const at = momentOf(of.day, minutes);
    const instrument = content.kind === "reading" ? usualInstrument(content.quantity) : null;
    looks.push({
      id: demoId(of.day, minutes, first + looks.length),
      car: of.car,
      visit: of.visit,
      place,
      content,
      loadState,
      instrument,
      photo: null,
      note: note ?? null,
      who: row.by,
      at,
    });
  };
  if (row.readings) putReadings(row.readings, put);
  for (const seen of row.seen ?? []) putSeen(seen, put);
  for (const corner of row.restOf ?? []) {
    const looked = new Set(looks.map(({ place }) => place));
    for (const position of positionsOf(of.family))
      if (cornerOf(position) === corner && !looked.has(position.id))
        put(position.id, { kind: "nothing-seen" }, "hanging");
  }
  return looks;
}

function reading(quantity: QuantityName, shown: number, point: string | null = null): LookContent {
  const value = insideOf(quantity, shown);
  const u = computeReadingUncertainty(quantity, usualInstrument(quantity), value);
  const { factor } = quantityForms[quantity];
  return { kind: "reading", quantity, value, u: insideOf(quantity, Number((u * factor).toPrecision(2))), point };
}

function putSeen(seen: SeenRow, put: Put): void {
  if ("signs" in seen) put(seen.place, { kind: "signs", signs: seen.signs }, seen.load, seen.note);
  else put(seen.place, reading(seen.quantity, seen.value), seen.load);
}

function putReadings(rows: ReadingRows, put: Put): void {
  const each = (item: string, quantity: QuantityName, four: Four | undefined): void => {
    for (const [index, corner] of corners.entries()) {
      const value = four?.[index];
      if (value !== undefined) put(`${corner}/${item}`, reading(quantity, value), "standing");
      else if (rows.notTaken?.includes(quantity)) put(`${corner}/${item}`, { kind: "not-taken", quantity }, null);
    }
  };
  each("ride-height", "ride-height", rows.heights);
  each("tyre/pressure", "pressure", rows.pressures);
  for (const [index, corner] of corners.entries()) {
    if (!rows.tread) break;
    const [middle, inner, outer] = [rows.tread[0][index] ?? 0, rows.tread[1][index] ?? 0, rows.tread[2][index] ?? 0];
    put(`${corner}/tyre/tread`, reading("tread", tenths(middle - inner), "inner"), "standing");
    put(`${corner}/tyre/tread`, reading("tread", middle, "middle"), "standing");
    put(`${corner}/tyre/tread`, reading("tread", tenths(middle - outer), "outer"), "standing");
  }
  for (const [index, corner] of corners.entries()) {
    const pad = rows.pads?.[index];
    if (pad === undefined) break;
    put(`${corner}/pads/thickness`, reading("pad-thickness", tenths(pad + 0.4), "inner"), "hanging");
    put(`${corner}/pads/thickness`, reading("pad-thickness", pad, "outer"), "hanging");
  }
  for (const [index, corner] of corners.entries()) {
    const least = rows.discs?.[0][index];
    if (least === undefined) break;
    for (const [point, more] of (rows.discs?.[index < 2 ? 1 : 2] ?? []).entries())
      put(`${corner}/disc/thickness`, reading("thickness", thousandths(least + more), String(point + 1)), "hanging");
  }
  each("alignment", "camber", rows.camber);
  each("alignment", "toe", rows.toe);
  if (rows.caster)
    for (const [index, side] of (["left", "right"] as const).entries())
      put(`front-${side}/alignment`, reading("caster", rows.caster[index] ?? 0), "standing");
}

const tenths = (value: number): number => Math.round(value * 10) / 10;
const thousandths = (value: number): number => Math.round(value * 1000) / 1000;
