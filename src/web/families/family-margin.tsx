import { Link } from "@tanstack/react-router";
import { formatNumber } from "#casework";
import { mmFromMetres } from "#quantity";
import type { Axle } from "../car.ts";
import { rungWords } from "../effect/rung-words.ts";
import type { LoadedFamily } from "../server/families.ts";
import { MarginSection } from "../shell/margin-section.tsx";
import { ExportLink } from "./export-link.tsx";
import { LAYOUT_WORDS } from "./layout-words.ts";
import { LineChanges } from "./line-changes.tsx";

const axleWords = (axle: Axle, invented: boolean): string =>
  `${LAYOUT_WORDS[axle.layout]}, track ${formatNumber(mmFromMetres(axle.track), 0)} mm, ${axle.wheel.tyreSize}; ${rungWords(axle.rung, invented)}`;

interface FamilyMarginProps {
  readonly loaded: LoadedFamily;
  /** Names of the other car lines; null where this one is not one's own to change. */
  readonly taken: readonly string[] | null;
}

/** What the margin of a family sheet says before a row is selected. */
export const FamilyMargin = ({ loaded, taken }: FamilyMarginProps) => {
  const { family } = loaded;
  const params = { familyId: family.id };
  return (
    <>
      <h2 className="heading">{family.name}</h2>
      {family.note === undefined ? null : <p className="margin-lead">{family.note}</p>}
      <MarginSection title="Front">{axleWords(family.front, family.invented)}</MarginSection>
      <MarginSection title="Rear">{axleWords(family.rear, family.invented)}</MarginSection>
      <MarginSection title="Mass">
        {formatNumber(family.kerbMass, 0)} kg ready to drive, {formatNumber(100 * family.frontWeightShare, 0)} % on the
        front
      </MarginSection>
      <p className="margin-links">
        <Link to="/families/$familyId/underside" params={params}>
          Underside
        </Link>
        <Link to="/families/$familyId/geometry" params={params}>
          Geometry
        </Link>
        <Link to="/families/$familyId/travel" params={params}>
          Over travel
        </Link>
        <Link to="/families/$familyId/hold" params={params}>
          How to hold it
        </Link>
        <Link to="/families/$familyId/edit" params={params}>
          Edit the data
        </Link>
        <ExportLink loaded={loaded} />
      </p>
      {taken === null ? null : <LineChanges loaded={loaded} taken={taken} />}
    </>
  );
};
