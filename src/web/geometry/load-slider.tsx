import { useState } from "react";
import type { Condition } from "#casework";
import { formatNumber } from "#casework";
import type { Axle } from "../car.ts";
import { LOAD_SCALES, LOAD_STEP, type LoadKind, loadKindOf, withLoad } from "./load-kind.ts";
import { Slider } from "./slider.tsx";

interface LoadSliderProps {
  readonly axle: Axle;
  readonly condition: Condition;
  readonly onChange: (condition: Condition) => void;
}

const isLoadKind = (value: string): value is LoadKind => LOAD_SCALES.some(({ kind }) => kind === value);

/** The force at this wheel: which one, and how large. */
export const LoadSlider = ({ axle, condition, onChange }: LoadSliderProps) => {
  const [chosen, setKind] = useState(() => loadKindOf(condition));
  const scales = LOAD_SCALES.filter((entry) => entry.kind !== "drive" || axle.driven);
  const kind = scales.some((entry) => entry.kind === chosen) ? chosen : loadKindOf(condition);
  const scale = scales.find((entry) => entry.kind === kind);
  if (scale === undefined) return null;
  const choose = (value: string) => {
    if (!isLoadKind(value)) return;
    setKind(value);
    onChange(withLoad(condition, value, Math.abs(condition[kind])));
  };
  return (
    <Slider
      label={`${scale.name} at this wheel`}
      heading={
        <select
          className="slider-select"
          aria-label="Force at this wheel"
          value={kind}
          onChange={(e) => choose(e.target.value)}
        >
          {scales.map((entry) => (
            <option key={entry.kind} value={entry.kind}>
              {entry.name}
            </option>
          ))}
        </select>
      }
      value={condition[kind]}
      low={scale.low}
      high={scale.high}
      step={LOAD_STEP}
      said={`${formatNumber(condition[kind] / 1000, 1)} kN`}
      lowSaid={scale.lowSaid}
      highSaid={scale.highSaid}
      onChange={(newtons) => onChange(withLoad(condition, kind, newtons))}
    />
  );
};
