import type { BodiesFault } from "#casework";
import { mmFromMetres } from "#quantity";
import { AmountEntry } from "../underside/amount-entry.tsx";
import { Choice } from "../underside/choice.tsx";
import { HardnessEntries } from "../underside/firmer-entry.tsx";
import { FACTOR, PLAY_MM } from "./bodies-search.ts";
import type { BodiesView } from "./use-bodies-view.ts";

const ignore = () => undefined;
const rounded = (value: number): number => Number(value.toFixed(6));
/** A layout has no hardness on file. */
const NONE_ON_FILE = { hardness: null, rateOrigin: "guess" } as const;

type Firmer = Extract<BodiesFault, { readonly kind: "firmer" }>;

/** How many times as firm, at least and at most, or the hardness of the old part and of the new. */
const HowFirm = ({ view: { place, change }, fault }: { readonly view: BodiesView; readonly fault: Firmer }) => {
  const byHardness = "hardness" in fault;
  return (
    <section>
      <h3 className="margin-title">How firm</h3>
      <div className="firmer-entry">
        {place?.takesHardness ? (
          <div className="choices">
            <Choice chosen={!byHardness} onChoose={() => change({ by: undefined })}>
              By its rate
            </Choice>
            <Choice chosen={byHardness} onChoose={() => change({ by: "hardness" })}>
              By its hardness
            </Choice>
          </div>
        ) : null}
        {"hardness" in fault ? (
          <HardnessEntries
            hardness={fault.hardness}
            rubber={NONE_ON_FILE}
            onEnter={(firmer) =>
              "hardness" in firmer
                ? change({
                    old_shore_a: firmer.hardness.from ?? undefined,
                    new_shore_a: firmer.hardness.to ?? undefined,
                  })
                : undefined
            }
            onOpen={ignore}
          />
        ) : (
          <>
            <AmountEntry
              label="As firm, at least"
              unit="times"
              value={fault.low}
              range={FACTOR}
              assumed={false}
              onEnter={(low) => change({ factor_low: low, factor_high: Math.max(low, fault.high) })}
              onOpen={ignore}
            />
            <AmountEntry
              label="As firm, at most"
              unit="times"
              value={fault.high}
              range={FACTOR}
              assumed={false}
              onEnter={(high) => change({ factor_low: Math.min(fault.low, high), factor_high: high })}
              onOpen={ignore}
            />
          </>
        )}
      </div>
    </section>
  );
};

/** How loose a loose part is, or how firm a firmer one; nothing for a torn one, whose share stands in the file. */
export const FaultAmount = ({ view }: { readonly view: BodiesView }) => {
  const { fault, change } = view;
  if (fault === null || fault.kind === "torn") return null;
  if (fault.kind === "firmer") return <HowFirm view={view} fault={fault} />;
  return (
    <AmountEntry
      label="Play, side to side"
      unit="mm"
      value={rounded(mmFromMetres(fault.play))}
      range={PLAY_MM}
      assumed={fault.assumed === true}
      onEnter={(play) => change({ play_mm: play })}
      onOpen={ignore}
    />
  );
};
