import { Link } from "@tanstack/react-router";
import { searchOfCondition } from "../effect/condition-in-address.ts";
import type { HoldSearch } from "../hold/hold-search.ts";
import { firmerBy, type TravelSearch } from "../travel/travel-search.ts";
import { formatMark } from "../underside/marks-in-address.ts";
import type { Geometry } from "./use-geometry.ts";

/** What Over travel draws of this sheet: the same corner, force and travel, the place torn or firmer as a line. */
const travelSearchOf = ({ corner, position, shown, condition, lines }: Geometry): TravelSearch => {
  const faults = [shown, ...lines.also];
  const torn = faults.some((fault) => fault?.kind === "torn");
  const firmer = faults.find((fault) => fault?.kind === "firmer");
  const [first, second] = lines.figures;
  return {
    corner,
    ...searchOfCondition(condition),
    ...(position !== null && torn ? { torn: position.id } : {}),
    ...(position !== null && firmer?.kind === "firmer" ? { firmer: position.id, firmer_by: firmerBy(firmer) } : {}),
    ...(lines.lowered === undefined ? {} : { lowered_mm: lines.lowered }),
    ...(first === "toe" || first === undefined ? {} : { first }),
    ...(second === "camber" || second === undefined ? {} : { second }),
  };
};

/** How the corner is held so that what is looked at shows. */
const holdSearchOf = ({ corner, position, shown }: Geometry): HoldSearch => ({
  corner,
  ...(position === null ? {} : { at: position.id }),
  ...(shown?.kind === "torn" || shown?.kind === "loose" ? { as: formatMark(shown) } : {}),
});

/** Where else this corner and place are looked at, each taking along what it can show of it. */
export const PlaceLinks = ({ geometry }: { readonly geometry: Geometry }) => {
  const { family, position } = geometry;
  const params = { familyId: family.id };
  return (
    <p className="margin-links">
      <Link to="/families/$familyId/travel" params={params} search={travelSearchOf(geometry)}>
        Over travel
      </Link>
      <Link to="/families/$familyId/hold" params={params} search={holdSearchOf(geometry)}>
        How to hold it
      </Link>
      <Link
        to="/families/$familyId/underside"
        params={params}
        search={({ as: _, ...last }) => ({ ...last, ...(position === null ? {} : { at: position.id }) })}
      >
        Underside
      </Link>
    </p>
  );
};
