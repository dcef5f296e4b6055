import { Link } from "@tanstack/react-router";
import { type Appraisal, type CarSuspect, formatChance } from "#casework";
import { positionName } from "#drawing";
import type { Family } from "../../car.ts";
import { MarginSection } from "../../shell/margin-section.tsx";
import { ChanceFacts } from "./chance-facts.tsx";
import { SuspectSaid } from "./suspect-said.tsx";

interface SuspectMarginProps {
  readonly visitId: string;
  readonly family: Family;
  readonly suspect: CarSuspect;
  readonly appraisal: Appraisal;
}

/** Explains one suspect: what its figure means, what it was before any look, what remains, where it would sit. */
export const SuspectMargin = ({ visitId, family, suspect, appraisal }: SuspectMarginProps) => {
  const { suspects } = appraisal;
  const look = suspects.next?.looks.find(({ id }) => id === suspect.cause) ?? null;
  const isOut = suspect.word?.word === "ruled-out";
  return (
    <>
      <p className="label">Suspect</p>
      <h2 className="heading">{suspect.label}</h2>
      <p className="margin-figure">
        <span className="figure-huge">{isOut ? "0" : formatChance(suspect.cures).replace(" %", "")}</span>
        <span className="unit">{isOut ? "% since it is ruled out" : "% that curing it alone cures the complaint"}</span>
      </p>
      <SuspectSaid suspect={suspect} appraisal={appraisal} />
      <MarginSection title="That it is there at all">
        {suspect.word === null
          ? formatChance(suspect.there)
          : isOut
            ? "taken as not there, since it is ruled out"
            : "taken as there, since it is accepted"}
      </MarginSection>
      <MarginSection title="Before any look">
        {formatChance(suspect.before)} of the cars that come with this complaint. Invented start values; no case of this
        workshop is counted yet.
      </MarginSection>
      <MarginSection title="What remains">
        Two at once {formatChance(suspects.twoAtOnce)}; something else {formatChance(suspects.somethingElse)}.
      </MarginSection>
      <MarginSection title="Where it would sit">
        {suspect.places.length === 0
          ? `${suspect.elsewhere.charAt(0).toUpperCase()}${suspect.elsewhere.slice(1)}.`
          : suspect.places.map((place) => positionName(family, place)).join("; ")}
      </MarginSection>
      {suspect.speaksFor.length === 0 ? null : (
        <MarginSection title="Speaks for it">{suspect.speaksFor.join("; ")}</MarginSection>
      )}
      {suspect.speaksAgainst.length === 0 ? null : (
        <MarginSection title="Speaks against it">{suspect.speaksAgainst.join("; ")}</MarginSection>
      )}
      <MarginSection title="Next">
        {look === null
          ? suspect.word !== null
            ? "Your word stands; no look at it is asked for."
            : "Its places have been looked at, or it has none."
          : `Look at every place of it, ${look.minutes} min: with ${formatChance(look.settles)} the complaint is then settled.`}
      </MarginSection>
      <ChanceFacts suspect={suspect} suspects={suspects} />
      <p className="margin-links">
        <Link to="/cases/$visit/underside" params={{ visit: visitId }}>
          Do this look
        </Link>
      </p>
    </>
  );
};
