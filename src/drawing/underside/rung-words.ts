import type { Axle, Family } from "#vehicle";

/** What a drawing says of an axle that is not drawn from its own measures; null where it is. */
export function rungWords(axle: Pick<Axle, "rung">): string | null {
  if (axle.rung === "layout") return "drawn from layout, wheelbase, track and tyre only";
  if (axle.rung === "scaled") return "scaled from a template, not measured";
  return null;
}

/** The same for a whole car: one note where both axles stand on one rung, else one per axle that has something to say. */
export function familyRungWords(family: Family): readonly string[] {
  const [front, rear] = [rungWords(family.front), rungWords(family.rear)];
  if (front === rear) return front === null ? [] : [front];
  return [...(front === null ? [] : [`front ${front}`]), ...(rear === null ? [] : [`rear ${rear}`])];
}
