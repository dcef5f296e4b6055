import type { LoadState, Look, LookContent, SignName, StoredLook } from "#casework";
import { digestOf } from "./row-digest.ts";
import type { LookRow } from "./tables.ts";

type ContentColumns = Pick<LookRow, "quantity" | "value_si" | "u_si" | "point" | "signs" | "withdrawn">;
type Reading = Extract<LookContent, { kind: "reading" }>;

const noContent: ContentColumns = {
  quantity: null,
  value_si: null,
  u_si: null,
  point: null,
  signs: null,
  withdrawn: null,
};

const columnsOf = (content: LookContent): ContentColumns => {
  switch (content.kind) {
    case "reading":
      if (!Number.isFinite(content.value) || !Number.isFinite(content.u)) throw new Error("A reading must be finite.");
      return {
        ...noContent,
        quantity: content.quantity,
        value_si: content.value,
        u_si: content.u,
        point: content.point,
      };
    case "signs":
      return { ...noContent, signs: JSON.stringify(content.signs) };
    case "nothing-seen":
      return noContent;
    case "not-taken":
      return { ...noContent, quantity: content.quantity };
    case "withdrawn":
      return { ...noContent, withdrawn: content.look };
  }
};

const lookDigest = (row: Omit<LookRow, "sequence" | "digest">): string =>
  digestOf([
    row.id,
    row.car,
    row.visit,
    row.place,
    row.kind,
    row.quantity,
    row.value_si,
    row.u_si,
    row.point,
    row.signs,
    row.withdrawn,
    row.load_state,
    row.instrument,
    row.photo,
    row.note,
    row.who,
    row.looked_at,
    row.received_at,
    row.clock_off,
  ]);

/** A look as a row. */
export const lookRow = (stored: StoredLook): LookRow => {
  const row = {
    sequence: stored.sequence,
    id: stored.id,
    car: stored.car,
    visit: stored.visit,
    place: stored.place,
    kind: stored.content.kind,
    ...columnsOf(stored.content),
    load_state: stored.loadState,
    instrument: stored.instrument,
    photo: stored.photo,
    note: stored.note,
    who: stored.who,
    looked_at: stored.at,
    received_at: stored.receivedAt,
    clock_off: stored.clockOff ? 1 : 0,
  };
  return { ...row, digest: lookDigest(row) };
};

/** True where a row is, to the last letter, what was written. */
export const isWholeLookRow = (row: LookRow): boolean => row.digest === lookDigest(row);

const spoilt = (row: LookRow): Error => new Error(`Look ${row.id} cannot be read: its columns do not fit together.`);

const contentOf = (row: LookRow): LookContent => {
  switch (row.kind) {
    case "reading":
      if (row.quantity === null || row.value_si === null || row.u_si === null) throw spoilt(row);
      return {
        kind: "reading",
        quantity: row.quantity as Reading["quantity"],
        value: row.value_si,
        u: row.u_si,
        point: row.point,
      };
    case "signs":
      if (row.signs === null) throw spoilt(row);
      return { kind: "signs", signs: JSON.parse(row.signs) as readonly SignName[] };
    case "nothing-seen":
      return { kind: "nothing-seen" };
    case "not-taken":
      return { kind: "not-taken", quantity: row.quantity as Reading["quantity"] | null };
    case "withdrawn":
      if (row.withdrawn === null) throw spoilt(row);
      return { kind: "withdrawn", look: row.withdrawn };
    default:
      throw spoilt(row);
  }
};

/** The look a row holds. */
export const lookOfRow = (row: LookRow): StoredLook => ({
  id: row.id,
  car: row.car,
  visit: row.visit,
  place: row.place,
  content: contentOf(row),
  loadState: row.load_state as LoadState | null,
  instrument: row.instrument,
  photo: row.photo,
  note: row.note,
  who: row.who,
  at: row.looked_at,
  sequence: row.sequence,
  receivedAt: row.received_at,
  clockOff: row.clock_off === 1,
});

/** A look without what the store knows of it, as the client sent it. */
export const lookAsSent = (look: Look): Look => ({
  id: look.id,
  car: look.car,
  visit: look.visit,
  place: look.place,
  content: look.content,
  loadState: look.loadState,
  instrument: look.instrument,
  photo: look.photo,
  note: look.note,
  who: look.who,
  at: look.at,
});
