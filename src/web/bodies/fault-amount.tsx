import { mmFromMetres } from "#quantity";
import { AmountEntry } from "../underside/amount-entry.tsx";
import { FACTOR, PLAY_MM } from "./bodies-search.ts";
import type { BodiesView } from "./use-bodies-view.ts";

const ignore = () => undefined;
const rounded = (value: number): number => Number(value.toFixed(6));

/** How loose a loose part is, or how firm a firmer one; nothing for a torn one, whose share stands in the file. */
export const FaultAmount = ({ view: { fault, change } }: { readonly view: BodiesView }) => {
  if (fault === null || fault.kind === "torn") return null;
  if (fault.kind === "loose")
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
  return (
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
  );
};
