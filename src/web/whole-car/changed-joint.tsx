import type { RubberFault } from "#casework";
import { metresFromMm, mmFromMetres } from "#quantity";
import type { Family, Position } from "../car.ts";
import { Choice } from "../choices/choice.tsx";
import { viewOptionsOf } from "../geometry/view-options.ts";
import { AmountEntry } from "../underside/amount-entry.tsx";
import { FirmerEntry } from "../underside/firmer-entry.tsx";
import { formatMark } from "../underside/marks-in-address.ts";
import { PLAY_MM } from "../underside/position-mark.ts";
import { possibleFaultsAt } from "../underside/rubber-at.ts";

const NONE = "";

/** Each field says beside itself what is not taken yet. */
const saidAtTheField = () => undefined;

const isRubberFault = ({ kind }: { readonly kind: string }): boolean => kind !== "fluid-gone";

/** Everything a joint can be in a bend; what it already is keeps its own amount. */
export const changesAt = (family: Family, position: Position, own: RubberFault | null) =>
  viewOptionsOf(possibleFaultsAt(family, position), [own]).filter(({ fault }) => isRubberFault(fault));

interface ChangedJointProps {
  readonly family: Family;
  readonly places: readonly Position[];
  readonly position: Position | null;
  readonly fault: RubberFault | null;
  readonly onPlace: (id: string | null) => void;
  readonly onAs: (mark: string) => void;
}

/** Which joint is torn, loose or firmer in the bend, and as what. */
export const ChangedJoint = ({ family, places, position, fault, onPlace, onAs }: ChangedJointProps) => (
  <>
    <Choice
      label="Joint"
      value={position?.id ?? NONE}
      options={[
        { value: NONE, words: "all sound" },
        ...places.map((p) => ({ value: p.id, words: `${p.axle} ${p.side}: ${p.label}` })),
      ]}
      onChoose={(id) => onPlace(id === NONE ? null : id)}
    />
    {position === null || fault === null ? null : (
      <Choice
        label="As"
        value={formatMark(fault)}
        options={changesAt(family, position, fault).map(({ key, words }) => ({ value: key, words }))}
        onChoose={onAs}
      />
    )}
  </>
);

/** How loose or how firm the joint is; nothing for a torn one, whose share is on file. */
export const HowMuch = ({
  family,
  position,
  fault,
  onAs,
}: Pick<ChangedJointProps, "family" | "onAs"> & { readonly position: Position; readonly fault: RubberFault }) => {
  if (fault.kind === "torn") return null;
  return (
    <section>
      <h3 className="margin-title">{fault.kind === "loose" ? "How loose" : "How firm"}</h3>
      {fault.kind === "loose" ? (
        <AmountEntry
          label="Play"
          unit="mm"
          range={PLAY_MM}
          value={Number(mmFromMetres(fault.play).toFixed(3))}
          assumed={fault.assumed === true}
          onOpen={saidAtTheField}
          onEnter={(mm) => onAs(formatMark({ kind: "loose", play: metresFromMm(mm) }))}
        />
      ) : (
        <FirmerEntry
          firmer={fault}
          rubber={possibleFaultsAt(family, position).rubber}
          onOpen={saidAtTheField}
          onEnter={(firmer) => onAs(formatMark(firmer))}
        />
      )}
    </section>
  );
};
