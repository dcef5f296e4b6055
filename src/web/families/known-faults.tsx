import { type Family, idWithoutSide, type KnownFault, positionsOf } from "../car.ts";
import { MarginSection } from "../shell/margin-section.tsx";

const TOLD: Readonly<Record<KnownFault["told"], string>> = {
  "seen-here": "seen here",
  told: "told, not seen here",
  bulletin: "from a bulletin",
};

/** "Front lower arm, rear hydraulic bush"; the position itself where this car line has no such place. */
const placeWords = (family: Family, position: string): string => {
  const place = positionsOf(family).find((one) => idWithoutSide(one) === position);
  if (place === undefined) return position;
  const label = `${place.label.charAt(0).toLowerCase()}${place.label.slice(1)}`;
  return `${place.axle === "front" ? "Front" : "Rear"} ${label}`;
};

interface KnownFaultsProps {
  readonly family: Family;
  /** Only those at this position without its side; null: all, each with its place. */
  readonly at: string | null;
}

/** Known weak points of a car line: the sign and on which face it sits, how to see it fitted, who says so; nothing where none are on file. */
export const KnownFaults = ({ family, at }: KnownFaultsProps) => {
  const faults = (family.work?.knownFaults ?? []).filter(({ position }) => at === null || position === at);
  if (faults.length === 0) return null;
  return (
    <MarginSection title={at === null ? "Where it goes" : "See it fitted"}>
      {faults.map((fault) => (
        <p key={fault.id} className="known-fault">
          {at === null ? <strong>{placeWords(family, fault.position)}. </strong> : null}
          {fault.sign}; on its {fault.face} face. {fault.howToSee}.{" "}
          <span className="note">
            {fault.scope}; {TOLD[fault.told]}, {fault.confirmed} times confirmed, {fault.denied} times denied.
          </span>
        </p>
      ))}
    </MarginSection>
  );
};
