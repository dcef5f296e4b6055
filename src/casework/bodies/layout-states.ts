import {
  buildLayoutLinkage,
  type CornerLoad,
  computeLayoutDerivatives,
  LayoutBalance,
  type LayoutDerivatives,
  type LayoutFault,
  type LayoutLinkage,
  type LayoutState,
  NO_LOAD,
  solveLayout,
} from "#engines/linkage";
import type { BodiesFile, RubberPlace } from "../bodies.ts";
import type { Condition } from "../fault-effect.ts";

/** A balance with the derivatives of its angles by everything uncertain. */
export interface LayoutBand {
  readonly state: LayoutState;
  readonly by: LayoutDerivatives;
}

/** One state of repair of a layout, asked at many heights. */
export class LayoutStates {
  readonly linkage: LayoutLinkage;
  readonly balance: LayoutBalance;

  constructor(
    private readonly file: BodiesFile,
    faults: readonly LayoutFault[],
  ) {
    this.linkage = buildLayoutLinkage(file.layout);
    this.balance = new LayoutBalance(this.linkage, file.elasticity, "contact-height", faults);
  }

  /** The balance under a condition at a height; null where none is found. */
  at({ rack, braking, lateral, drive }: Condition, contactRise: number): LayoutBand | null {
    const load: CornerLoad = { ...NO_LOAD, rack, braking, lateral, drive, contactRise };
    const answer = solveLayout(this.balance, load);
    if ("unsolved" in answer) return null;
    const { state } = answer;
    const by = computeLayoutDerivatives(this.balance, state);
    return by && { state, by };
  }

  /** Standard deviations of everything uncertain, in the order of the derivatives. */
  deviationsOf({ parameters }: LayoutDerivatives): readonly number[] {
    const { sd, rateSd } = this.file;
    return parameters.map((p) => (p.kind === "rate" ? (rateSd[p.name] ?? 0) : sd[p.axis]));
  }
}

/** Everything of a place's rubber times a share. */
export const tornBy = ({ part, end }: RubberPlace, share: number): LayoutFault => ({
  kind: "soft",
  part,
  end,
  factor: share,
});
