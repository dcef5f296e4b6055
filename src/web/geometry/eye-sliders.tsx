import { formatNumber } from "#casework";
import type { EyePlace } from "#drawing";
import { Slider } from "./slider.tsx";

const HALF_TURN = 180;
const LOWEST_EYE = -30;
const HIGHEST_EYE = 90;
const EYE_STEP = 5;

interface EyeSlidersProps {
  readonly eye: EyePlace;
  readonly onChange: (eye: EyePlace) => void;
}

/** From where something in space is seen: round it, and how high. */
export const EyeSliders = ({ eye, onChange }: EyeSlidersProps) => (
  <div className="travel-eye">
    <Slider
      label="Walk round it"
      value={eye.turn}
      low={-HALF_TURN}
      high={HALF_TURN}
      step={EYE_STEP}
      said={`${formatNumber(eye.turn, 0)}°`}
      lowSaid="round the right"
      highSaid="round the left"
      onChange={(turn) => onChange({ ...eye, turn })}
    />
    <Slider
      label="Eye height"
      value={eye.tilt}
      low={LOWEST_EYE}
      high={HIGHEST_EYE}
      step={EYE_STEP}
      said={`${formatNumber(eye.tilt, 0)}°`}
      lowSaid="from below"
      highSaid="from above"
      onChange={(tilt) => onChange({ ...eye, tilt })}
    />
  </div>
);
