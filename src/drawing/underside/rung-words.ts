import { type Axle, type Family, isAssumed } from "#vehicle";

/** What a drawing says of an axle that is not drawn from its own measures; null where it is. */
export function rungWords(axle: Pick<Axle, "rung">): string | null {
  if (axle.rung === "layout") return "drawn from layout, wheelbase, track and tyre only";
  if (axle.rung === "scaled") return "scaled from a template, not measured";
  return null;
}

/** The same for a whole car: one note where both axles stand on one rung, else one per axle that has something to say. */
export function familyRungWords(family: Family): readonly string[] {
  const { front, rear } = family;
  const assumed = assumedLayoutWords(family);
  if (front.rung === rear.rung && front.rung === "scaled" && assumed !== null)
    return [`scaled from a template, ${assumed}`];
  const [ahead, behind] = [rungWords(front), rungWords(rear)];
  const known = ahead === behind ? [ahead] : [ahead && `front ${ahead}`, behind && `rear ${behind}`];
  return [...known, assumed].filter((words) => words !== null);
}

/** Which layout nobody has told; null where both were. */
function assumedLayoutWords(family: Family): string | null {
  const [front, rear] = [isAssumed(family, "front-layout"), isAssumed(family, "rear-layout")];
  if (!front && !rear) return null;
  return front && rear ? "both layouts assumed" : `${front ? "front" : "rear"} layout assumed`;
}
