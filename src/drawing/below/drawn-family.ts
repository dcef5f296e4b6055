import { type Axle, type Family, familyFromSilhouette, type Position, positionsOf } from "#vehicle";

/** What is drawn of a family, and where its positions then lie. */
export interface DrawnFamily {
  readonly family: Family;
  readonly positions: readonly Position[];
}

/**
 * The family as it may be drawn: an axle on rung "layout" is replaced by the silhouette of its layout, fitted to
 * wheelbase, track and tyre, and its positions lie where the silhouette has them (nowhere if it has none of that name).
 */
export function drawnFamily(family: Family): DrawnFamily {
  const positions = positionsOf(family);
  if (family.front.rung !== "layout" && family.rear.rung !== "layout") return { family, positions };
  const { front, rear, wheelbase } = family;
  const silhouette = familyFromSilhouette(
    {
      ...(front.layout === "bodies" ? {} : { frontLayout: front.layout }),
      ...(rear.layout === "bodies" ? {} : { rearLayout: rear.layout }),
      wheelbase,
      frontTrack: front.track,
      rearTrack: rear.track,
      tyreSize: front.wheel.tyreSize,
    },
    "layout",
  );
  if ("findings" in silhouette) return { family, positions };
  const stand = (own: Axle, drawn: Axle): Axle => (own.rung === "layout" ? drawn : own);
  const shown = {
    ...family,
    front: stand(front, silhouette.family.front),
    rear: stand(rear, silhouette.family.rear),
  };
  const places = new Map(positionsOf(shown).map(({ id, at }) => [id, at]));
  return {
    family: shown,
    positions: positions.map((position) => ({ ...position, at: places.get(position.id) ?? null })),
  };
}
