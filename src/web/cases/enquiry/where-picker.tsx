import { groupWords } from "#drawing";
import type { Corner } from "../../car.ts";
import { cornersOf, toggleCorner, type Where, whereWords } from "./where-on-car.ts";

/** As they lie seen from above, front up: left is left. */
const WHEELS: readonly Corner[] = ["front-left", "front-right", "rear-left", "rear-right"];

interface WherePickerProps {
  readonly where: Where;
  readonly onChange: (where: Where) => void;
}

/** Where it is felt: four wheels to tap on a car seen from above. */
export const WherePicker = ({ where, onChange }: WherePickerProps) => {
  const chosen = cornersOf(where);
  return (
    <fieldset className="where">
      <legend className="margin-title">Where it is felt</legend>
      <div className="where-car">
        <svg viewBox="0 0 160 168" className="where-drawing" aria-hidden="true">
          <path d="M58 10Q80 0 102 10L108 44V128L102 158Q80 166 58 158L52 128V44Z" />
          <path d="M60 52Q80 44 100 52L96 68H64ZM64 122H96L100 136Q80 142 60 136Z" />
          <path d="M80 4V166" className="where-axis" />
        </svg>
        {WHEELS.map((wheel) => (
          <button
            key={wheel}
            type="button"
            className="where-wheel"
            data-wheel={wheel}
            aria-pressed={chosen.includes(wheel)}
            aria-label={groupWords(wheel)}
            onClick={() => onChange(toggleCorner(where, wheel))}
          >
            <span />
          </button>
        ))}
      </div>
      <p className="label">{whereWords(where) || "tap the wheels; seen from above"}</p>
    </fieldset>
  );
};
