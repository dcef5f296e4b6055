import { Link } from "@tanstack/react-router";
import { type CarSuspect, type CarSuspects, formatChance } from "#casework";
import { positionName } from "#drawing";
import type { Family } from "../../car.ts";
import { MarginSection } from "../../shell/margin-section.tsx";

interface SuspectMarginProps {
  readonly visitId: string;
  readonly family: Family;
  readonly suspect: CarSuspect;
  readonly suspects: CarSuspects;
}

/** Explains one suspect: what its figure means, what it was before any look, what remains, where it would sit. */
export const SuspectMargin = ({ visitId, family, suspect, suspects }: SuspectMarginProps) => {
  const look = suspects.next?.looks.find(({ id }) => id === suspect.cause) ?? null;
  return (
    <>
      <p className="label">Suspect</p>
      <h2 className="heading">{suspect.label}</h2>
      <p className="margin-figure">
        <span className="figure-huge">{formatChance(suspect.cures).replace(" %", "")}</span>
        <span className="unit">% that curing it alone cures the complaint</span>
      </p>
      <MarginSection title="That it is there at all">{formatChance(suspect.there)}</MarginSection>
      <MarginSection title="Before any look">
        {formatChance(suspect.before)}: share of this cause among cars that come with this complaint. Invented start
        values; no case of this workshop is counted yet.
      </MarginSection>
      <MarginSection title="What remains">
        Two at once {formatChance(suspects.twoAtOnce)}; something else {formatChance(suspects.somethingElse)}.
      </MarginSection>
      <MarginSection title="Where it would sit">
        {suspect.places.length === 0
          ? "It has no place on the underside."
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
          ? "Its places have been looked at, or it has none."
          : `Look at every place of it, ${look.minutes} min: with ${formatChance(look.settles)} the complaint is then settled.`}
      </MarginSection>
      <MarginSection title="Computed so">
        Exact inference over all sets of causes: each cause brings a complaint about on its own with its strength, a
        look shows it with its reliability. Source trade-symptoms, shares invented.
      </MarginSection>
      <p className="margin-links">
        <Link to="/cases/$visit/underside" params={{ visit: visitId }}>
          Do this look
        </Link>
      </p>
    </>
  );
};
