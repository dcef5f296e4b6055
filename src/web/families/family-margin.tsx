import { Link } from "@tanstack/react-router";
import { formatNumber } from "#casework";
import { type AssumedFigure, assumedMark, isAssumed, leftOutOrigin } from "#drawing";
import { mmFromMetres } from "#quantity";
import type { AxleName, Family } from "../car.ts";
import { rungWords } from "../effect/rung-words.ts";
import type { LoadedFamily } from "../server/families.ts";
import { MarginSection } from "../shell/margin-section.tsx";
import { ExportLink } from "./export-link.tsx";
import { KnownFaults } from "./known-faults.tsx";
import { LAYOUT_WORDS } from "./layout-words.ts";
import { LineChanges } from "./line-changes.tsx";
import { SheetsOfFamily } from "./sheets-of-family.tsx";
import { useDoubts } from "./use-doubts.ts";

/** What no silhouette asks for and the templates give, in words. */
const TEMPLATE_WORDS: readonly { readonly words: string; readonly figures: readonly AssumedFigure[] }[] = [
  { words: "height of the centre of mass", figures: ["centre-of-mass-height"] },
  { words: "shares of the brake force", figures: ["brake-shares"] },
  { words: "spring rates", figures: ["front-spring-rate", "rear-spring-rate"] },
  { words: "unsprung masses", figures: ["front-unsprung-mass", "rear-unsprung-mass"] },
  { words: "set camber and toe", figures: ["front-set-angles", "rear-set-angles"] },
];

const axleWords = (family: Family, name: AxleName): string => {
  const axle = family[name];
  const layout = `${LAYOUT_WORDS[axle.layout]}${assumedMark(family, `${name}-layout`)}`;
  const track = `track ${formatNumber(mmFromMetres(axle.track), 0)} mm${assumedMark(family, `${name}-track`)}`;
  const tyre = `${axle.wheel.tyreSize}${assumedMark(family, `${name}-tyre-size`)}`;
  const height = isAssumed(family, `${name}-height`) ? ", height as built (assumed)" : "";
  return `${layout}, ${track}, ${tyre}${height}; ${rungWords(axle.rung, family.invented)}`;
};

/** What "assumed" means on this sheet, and what else of it nobody has entered; nothing where all was. */
const AssumedSection = ({ family }: { readonly family: Family }) => {
  const { assumed = [] } = family;
  if (assumed.length === 0) return null;
  const template = TEMPLATE_WORDS.filter(({ figures }) => figures.some((figure) => isAssumed(family, figure)));
  const leftOut = assumed.some((figure) => !TEMPLATE_WORDS.some(({ figures }) => figures.includes(figure)));
  return (
    <MarginSection title="Assumed">
      {leftOut ? `What is called assumed: ${leftOutOrigin}. ` : ""}
      {template.length === 0 ? "" : `From the templates: ${template.map(({ words }) => words).join(", ")}.`}
    </MarginSection>
  );
};

/** What in a car line of one's own is doubtful by today's checks, and where it is put right; nothing where nothing is. */
const Doubts = ({ family }: { readonly family: Family | null }) => {
  const doubts = useDoubts(family);
  if (family === null || doubts.length === 0) return null;
  return (
    <div className="margin-notice" role="status">
      {doubts.length === 1 ? "One figure is" : `${doubts.length} figures are`} doubtful by checks that came after this
      car line was kept: look at {doubts.length === 1 ? "it" : "them"} again under{" "}
      <Link to="/families/$familyId/edit" params={{ familyId: family.id }}>
        Edit the data
      </Link>
      .
    </div>
  );
};

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
      <SheetsOfFamily familyId={family.id} />
      <p className="margin-links">
        <Link to="/families/$familyId/edit" params={params}>
          Edit the data
        </Link>
        <ExportLink loaded={loaded} />
      </p>
      <Doubts family={taken === null ? null : family} />
      <MarginSection title="Front">{axleWords(family, "front")}</MarginSection>
      <MarginSection title="Rear">{axleWords(family, "rear")}</MarginSection>
      <MarginSection title="Mass">
        {formatNumber(family.kerbMass, 0)} kg ready to drive{assumedMark(family, "kerb-mass")},{" "}
        {formatNumber(100 * family.frontWeightShare, 0)} % on the front{assumedMark(family, "front-weight-share")}
      </MarginSection>
      <AssumedSection family={family} />
      {family.life.length > 0 ? null : (
        <MarginSection title="When it goes">No distance is on file for any place of this car line.</MarginSection>
      )}
      <KnownFaults family={family} at={null} />
      {taken === null ? null : <LineChanges loaded={loaded} taken={taken} />}
    </>
  );
};
