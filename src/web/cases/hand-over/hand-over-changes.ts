import type { HandOverDocument } from "#casework";

type Taught = HandOverDocument["taught"][number];

/** A hand-over nobody has begun. */
export const emptyHandOver: HandOverDocument = {
  overrides: [],
  taught: [],
  signedBy: null,
  signedAt: null,
  receivedBy: null,
};

/** Passes a check over, with who says so and why. */
export const passOver = (
  doc: HandOverDocument | null,
  override: HandOverDocument["overrides"][number],
): HandOverDocument => {
  const body = doc ?? emptyHandOver;
  return { ...body, overrides: [...body.overrides.filter((o) => o.gate !== override.gate), override] };
};

/** Takes back that a check was passed over. */
export const holdAgain = (doc: HandOverDocument | null, gate: string): HandOverDocument => {
  const body = doc ?? emptyHandOver;
  return { ...body, overrides: body.overrides.filter((o) => o.gate !== gate) };
};

/** Says what became of something that may have to be taught anew; said again it is taken back. */
export const sayTaught = (doc: HandOverDocument | null, taught: Taught): HandOverDocument => {
  const body = doc ?? emptyHandOver;
  const others = body.taught.filter((t) => t.item !== taught.item);
  const same = body.taught.some((t) => t.item === taught.item && t.state === taught.state);
  return { ...body, taught: same ? others : [...others, taught] };
};

/** Signs the hand-over. */
export const signOver = (doc: HandOverDocument | null, signedBy: string, signedAt: string): HandOverDocument => ({
  ...(doc ?? emptyHandOver),
  signedBy,
  signedAt,
});
