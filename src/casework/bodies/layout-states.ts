import {
  buildLayoutLinkage,
  type CornerLoad,
  computeLayoutDerivatives,
  LayoutBalance,
  type LayoutDerivatives,
  type LayoutEquilibria,
  type LayoutFault,
  type LayoutLinkage,
  type LayoutState,
  NO_LOAD,
  solveLayout,
} from "#engines/linkage";
import type { BodiesFile } from "../bodies.ts";
import type { Condition } from "../fault-effect.ts";

/** A balance with the derivatives of its angles by everything uncertain. */
export interface LayoutBand {
  readonly state: LayoutState;
  /** Every other balance of the same load, where something is loose. */
  readonly others: readonly LayoutState[];
  readonly by: LayoutDerivatives;
}

/** One state of repair of a layout, asked at many heights. */
export class LayoutStates {
  readonly linkage: LayoutLinkage;
  readonly balance: LayoutBalance;
  /** What was found last. */
  private last: LayoutEquilibria | null = null;

  constructor(
    private readonly file: BodiesFile,
    faults: readonly LayoutFault[],
  ) {
    this.linkage = buildLayoutLinkage(file.layout);
    this.balance = new LayoutBalance(this.linkage, file.elasticity, "contact-height", faults);
  }

  /** The balance under a condition at a height; null where none is found. Close heights one after the other are quick. */
  at({ rack, braking, lateral, drive }: Condition, contactRise: number): LayoutBand | null {
    const load: CornerLoad = { ...NO_LOAD, rack, braking, lateral, drive, contactRise };
    const answer = solveLayout(this.balance, load, this.last);
    if ("unsolved" in answer) return null;
    this.last = answer;
    const { state, others } = answer;
    const by = computeLayoutDerivatives(this.balance, state);
    return by && { state, others, by };
  }

  /** Standard deviations of everything uncertain, in the order of the derivatives. */
  deviationsOf({ parameters }: LayoutDerivatives): readonly number[] {
    const { sd, rateSd } = this.file;
    return parameters.map((p) => (p.kind === "rate" ? (rateSd[p.name] ?? 0) : sd[p.axis]));
  }
}
