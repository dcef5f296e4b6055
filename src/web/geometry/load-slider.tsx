import { useState } from "react";
import type { Condition } from "#casework";
import { formatNumber } from "#casework";
import { LOAD_SCALES, LOAD_STEP, type LoadKind, loadKindOf, withLoad } from "./load-kind.ts";
import { Slider } from "./slider.tsx";

interface LoadSliderProps {
  readonly condition: Condition;
  readonly onChange: (condition: Condition) => void;
}

const isLoadKind = (value: string): value is LoadKind => LOAD_SCALES.some(({ kind }) => kind === value);

/** The force at this wheel: which one, and how large. */
export const LoadSlider = ({ condition, onChange }: LoadSliderProps) => {
  const [kind, setKind] = useState(() => loadKindOf(condition));
  const scale = LOAD_SCALES.find((entry) => entry.kind === kind);
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
          {LOAD_SCALES.map((entry) => (
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
