import { type ReactNode, useId } from "react";

interface SliderProps {
  readonly label: string;
  /** Stands in the place of the label where the label itself can be chosen. */
  readonly heading?: ReactNode;
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly step: number;
  /** The value with its unit, as read beside the label and aloud. */
  readonly said: string;
  readonly lowSaid: string;
  readonly highSaid: string;
  readonly onChange: (value: number) => void;
}

const TICKS = 8;

const Ticks = () => (
  <svg className="slider-ticks" viewBox="0 0 80 8" preserveAspectRatio="none" aria-hidden="true">
    {Array.from({ length: TICKS + 1 }, (_, i) => (80 / TICKS) * i).map((x) => (
      <path key={x} d={`M${x} 0V8`} vectorEffect="non-scaling-stroke" />
    ))}
  </svg>
);

/** One setting along a ruler: drag it, or arrow, page, home and end keys. */
export const Slider = ({ label, heading, value, low, high, step, said, lowSaid, highSaid, onChange }: SliderProps) => {
  const id = useId();
  return (
    <div className="slider">
      <div className="slider-head">
        {heading ?? <label htmlFor={id}>{label}</label>}
        <output htmlFor={id}>{said}</output>
      </div>
      <div className="slider-track">
        <Ticks />
        <input
          id={id}
          type="range"
          min={low}
          max={high}
          step={step}
          value={value}
          aria-label={label}
          aria-valuetext={said}
          onChange={(event) => onChange(event.target.valueAsNumber)}
        />
      </div>
      <div className="slider-ends note" aria-hidden="true">
        <span>{lowSaid}</span>
        <span>{highSaid}</span>
      </div>
    </div>
  );
};

/** A setting this axle does not have, with the reason. */
export const NoSlider = ({ label, why }: { readonly label: string; readonly why: string }) => (
  <div className="slider">
    <div className="slider-head">
      <span className="slider-label">{label}</span>
      <span>none</span>
    </div>
    <div className="slider-track">
      <Ticks />
    </div>
    <p className="slider-why note">{why}</p>
  </div>
);
