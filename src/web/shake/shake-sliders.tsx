import { formatNumber, type Shake } from "#casework";
import { kmPerHourFromMetresPerSecond } from "#quantity";
import { Slider } from "../geometry/slider.tsx";
import { FELT_KMH, VARIATION_MM } from "./shake-search.ts";
import type { ShakeSetting } from "./use-shake-setting.ts";

interface ShakeSlidersProps {
  readonly setting: ShakeSetting;
  /** Stands at its worst speed until somebody says where it is felt; null while it is not known. */
  readonly shake: Shake | null;
  readonly onChange: (setting: ShakeSetting) => void;
}

const NO_ANSWER_KMH = 110;

/** The disc that pulls at the wheel, and the speed at which the driver feels it. */
export const ShakeSliders = ({ setting, shake, onChange }: ShakeSlidersProps) => {
  const { variation, felt } = setting;
  const worst = shake === null ? NO_ANSWER_KMH : Math.round(kmPerHourFromMetresPerSecond(shake.worst.speed));
  return (
    <>
      <Slider
        label="Uneven disc"
        value={variation}
        low={VARIATION_MM.low}
        high={VARIATION_MM.high}
        step={VARIATION_MM.step}
        said={`${formatNumber(variation, 3)} mm${variation === VARIATION_MM.usual ? ", as a new one may" : ""}`}
        lowSaid={`${VARIATION_MM.low} mm`}
        highSaid={`${VARIATION_MM.high} mm`}
        onChange={(mm) => onChange({ ...setting, variation: mm })}
      />
      <Slider
        label="Felt at"
        value={felt ?? worst}
        low={FELT_KMH.low}
        high={FELT_KMH.high}
        step={FELT_KMH.step}
        said={felt === null ? "not said" : `${felt} km/h`}
        lowSaid={`${FELT_KMH.low} km/h`}
        highSaid={`${FELT_KMH.high} km/h`}
        onChange={(kmh) => onChange({ ...setting, felt: kmh })}
      />
    </>
  );
};
