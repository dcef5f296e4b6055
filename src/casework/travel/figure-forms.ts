import type { TravelPosition } from "#engines/linkage";
import { degreesFromRadians, mmFromMetres } from "#quantity";
import type { TravelFigure } from "./travel-sheet.ts";

interface Form {
  readonly figure: TravelFigure;
  /** What it is chosen by. */
  readonly name: string;
  /** What stands at its axis. */
  readonly title: string;
  readonly unit: "deg" | "mm" | "";
  /** From the rigid linkage; absent: it is balanced with the rubber in its joints, under the asked force. */
  readonly rigid?: (position: TravelPosition, design: TravelPosition) => number | null;
}

const axisOf = ({ steering }: TravelPosition) => steering?.springHeld ?? steering?.heightHeld ?? null;
const degrees = (radians: number | undefined): number | null =>
  radians === undefined ? null : degreesFromRadians(radians);
const millimetres = (metres: number | undefined): number | null => (metres === undefined ? null : mmFromMetres(metres));

/** Every figure that can be followed, in the order it is offered. */
export const travelFigureForms: readonly Form[] = [
  { figure: "toe", name: "toe", title: "toe, °, in is +", unit: "deg" },
  { figure: "camber", name: "camber", title: "camber, °", unit: "deg" },
  { figure: "wheelbase", name: "wheel fore and aft", title: "wheel centre, mm, forward is +", unit: "mm" },
  {
    figure: "track",
    name: "patch sideways",
    title: "patch sideways, mm, out is +",
    unit: "mm",
    rigid: (p, design) => mmFromMetres(p.attitude.contact[1] - design.attitude.contact[1]),
  },
  { figure: "caster", name: "caster", title: "caster, °", unit: "deg", rigid: (p) => degrees(axisOf(p)?.caster) },
  { figure: "trail", name: "trail", title: "trail, mm", unit: "mm", rigid: (p) => millimetres(axisOf(p)?.trail) },
  { figure: "scrub", name: "scrub", title: "scrub, mm", unit: "mm", rigid: (p) => millimetres(axisOf(p)?.scrub) },
  {
    figure: "roll-centre",
    name: "roll centre",
    title: "roll centre, mm above ground",
    unit: "mm",
    rigid: (p) => mmFromMetres(p.rollCentreMigrating),
  },
  {
    figure: "spring-ratio",
    name: "spring per travel",
    title: "spring per wheel travel",
    unit: "",
    rigid: (p) => p.springRatio,
  },
];

/** The form of a figure; throws for one that is not offered. */
export function travelFigureForm(figure: TravelFigure): Form {
  const form = travelFigureForms.find((f) => f.figure === figure);
  if (!form) throw new Error(`no figure ${figure} is followed over travel`);
  return form;
}
