import { Link } from "@tanstack/react-router";
import { formatNumber } from "#casework";
import { type Family, idWithoutSide, type PracticeLife, positionsOf } from "../car.ts";
import { MarginSection } from "../shell/margin-section.tsx";
import { KnownFaults } from "./known-faults.tsx";

interface LifeMarginProps {
  readonly family: Family;
  readonly life: PracticeLife;
}

const thousands = (km: number): string => formatNumber(km / 1000, 0);

/** Explains one row of the wear calendar: when it goes, how that is known, where to look at it. */
export const LifeMargin = ({ family, life }: LifeMarginProps) => {
  const places = positionsOf(family).filter((position) => idWithoutSide(position) === life.position);
  const [first] = places;
  const axle = life.position.startsWith("front") ? "Front" : "Rear";
  const label = first?.label ?? life.position;
  return (
    <>
      <div className="margin-top">
        <span className="margin-grade">When it goes</span>
        <span className="label">practice, not counted</span>
      </div>
      <h2 className="heading">
        {axle} {label.charAt(0).toLowerCase()}
        {label.slice(1)}
      </h2>
      <p className="margin-figure">
        <span className="figure-huge">{thousands(life.middleKm)}</span>
        <span className="unit">thousand km, half gone</span>
      </p>
      <p className="label">
        one in ten by {thousands(life.lowKm)}, nine in ten by {thousands(life.highKm)} thousand km
      </p>
      <MarginSection title="How sure">
        From practice only: {life.source}. No car of this line has been counted here, so no curve is drawn.
      </MarginSection>
      <KnownFaults family={family} at={life.position} />
      <MarginSection title="Where to look">
        {places.length === 0
          ? "This family has no place of that name."
          : "Mark it on the underside and read what it does."}
      </MarginSection>
      <p className="margin-links">
        {places.map((position) => (
          <Link
            key={position.id}
            to="/families/$familyId/underside"
            params={{ familyId: family.id }}
            search={{ at: position.id }}
          >
            {position.side === null ? "On the underside" : `On the ${position.side}`}
          </Link>
        ))}
      </p>
    </>
  );
};
