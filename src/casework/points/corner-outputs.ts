import type { BandFigure, BandPosition } from "#engines/linkage";
import { degreesFromRadians, mmFromMetres } from "#quantity";
import type { CornerAssembly } from "#vehicle";
import { formatNumber } from "../fault/format-figure.ts";

/** Changes are said at so much bump and droop, m, or at the stop where that comes first. */
const SAID_AT = 0.05;

/** A figure of a corner that its hard points decide, at one travel; shown in the unit it is said in. */
export interface CornerOutput {
  readonly key: string;
  readonly label: string;
  readonly unit: "deg" | "mm" | "deg per m";
  readonly travel: number;
  readonly of: (at: BandPosition) => BandFigure;
  readonly show: (si: number) => number;
}

/** The figures of a corner that its hard points decide: changes of toe and camber, what they gain, the roll centre. */
export const cornerOutputs = ({ bumpStop, droopStop }: CornerAssembly): readonly CornerOutput[] => {
  const [bump, droop] = [Math.min(SAID_AT, bumpStop), Math.min(SAID_AT, droopStop)];
  const mm = (metres: number): string => `${formatNumber(mmFromMetres(Math.abs(metres)), 0)} mm`;
  const change = (key: "toe" | "camber", travel: number): CornerOutput => ({
    key: `${key}-${travel > 0 ? "bump" : "droop"}`,
    label: `${key === "toe" ? "Toe" : "Camber"} from ride height, ${mm(travel)} of ${travel > 0 ? "bump" : "droop"}`,
    unit: "deg",
    travel,
    of: (at) => (key === "toe" ? at.toeChange : at.camberChange),
    show: degreesFromRadians,
  });
  return [
    change("toe", bump),
    change("toe", -droop),
    change("camber", bump),
    change("camber", -droop),
    {
      key: "toe-gain",
      label: "Toe per travel at ride height",
      unit: "deg per m",
      travel: 0,
      of: (at) => at.toeGain,
      show: degreesFromRadians,
    },
    {
      key: "camber-gain",
      label: "Camber per travel at ride height",
      unit: "deg per m",
      travel: 0,
      of: (at) => at.camberGain,
      show: degreesFromRadians,
    },
    {
      key: "roll-centre",
      label: "Roll centre above the ground at ride height",
      unit: "mm",
      travel: 0,
      of: (at) => at.rollCentre,
      show: mmFromMetres,
    },
  ];
};
