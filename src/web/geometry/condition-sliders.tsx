import { type Condition, formatNumber, turnOfRackLeft } from "#casework";
import { metresFromMm, mmFromMetres } from "#quantity";
import type { Axle } from "../car.ts";
import { LoadSlider } from "./load-slider.tsx";
import { NoSlider, Slider } from "./slider.tsx";

interface ConditionSlidersProps {
  readonly axle: Axle;
  readonly condition: Condition;
  readonly onChange: (condition: Condition) => void;
}

const wholeMm = (metres: number): number => Math.round(mmFromMetres(metres));
const signed = (mm: number): string => `${mm > 0 ? "+" : ""}${formatNumber(mm, 0)} mm`;

const TravelSlider = ({ axle, condition, onChange }: ConditionSlidersProps) => {
  const [droop, bump] = [wholeMm(axle.droopStop), wholeMm(axle.bumpStop)];
  const mm = wholeMm(condition.contactRise);
  return (
    <Slider
      label="Travel"
      value={mm}
      low={-droop}
      high={bump}
      step={1}
      said={mm === 0 ? "0 mm, ride height" : signed(mm)}
      lowSaid={`${droop} droop`}
      highSaid={`${bump} bump`}
      onChange={(value) => onChange({ ...condition, contactRise: metresFromMm(value) })}
    />
  );
};

const OTHER = { left: "right", right: "left" } as const;

const RackSlider = ({ axle, condition, onChange }: ConditionSlidersProps) => {
  if (axle.rackTravel === undefined) return <NoSlider label="Rack" why="this axle is not steered" />;
  const reach = wholeMm(axle.rackTravel);
  const mm = wholeMm(condition.rack);
  const turn = turnOfRackLeft(axle);
  const turns = (rackTo: "left" | "right"): string =>
    turn === null ? "" : `, turns ${rackTo === "left" ? turn : OTHER[turn]}`;
  return (
    <Slider
      label="Rack"
      value={mm}
      low={-reach}
      high={reach}
      step={1}
      said={mm === 0 ? "0 mm, straight ahead" : `${signed(mm)}${turns(mm > 0 ? "left" : "right")}`}
      lowSaid={`rack ${reach} right${turns("right")}`}
      highSaid={`rack ${reach} left${turns("left")}`}
      onChange={(value) => onChange({ ...condition, rack: metresFromMm(value) })}
    />
  );
};

/** Where body and rack stand and what pulls at the wheel. */
export const ConditionSliders = (props: ConditionSlidersProps) => (
  <>
    <TravelSlider {...props} />
    <LoadSlider axle={props.axle} condition={props.condition} onChange={props.onChange} />
    <RackSlider {...props} />
  </>
);
