import type { AxleName, LayoutName } from "../car.ts";
import { LAYOUT_WORDS } from "../families/layout-words.ts";
import { LayoutSilhouette } from "./layout-silhouette.tsx";

interface LayoutChoiceProps {
  readonly axle: AxleName;
  /** Layouts there is a template for. */
  readonly layouts: readonly string[];
  /** "" where none has been tapped. */
  readonly value: LayoutName | "";
  /** What is taken where none is tapped. */
  readonly assumed: LayoutName;
  readonly onChange: (layout: LayoutName) => void;
}

const isLayout = (name: string): name is LayoutName => Object.hasOwn(LAYOUT_WORDS, name);

/** Which layout an axle has, chosen by how it looks from below. */
export const LayoutChoice = ({ axle, layouts, value, assumed, onChange }: LayoutChoiceProps) => (
  <fieldset className="layouts">
    <legend>{axle === "front" ? "Front axle" : "Rear axle"}</legend>
    {value === "" ? (
      <p className="note">Tap the one it looks like; until then {LAYOUT_WORDS[assumed]} is assumed.</p>
    ) : null}
    <div className="layout-row">
      {layouts.filter(isLayout).map((layout) => (
        <label key={layout} className="layout">
          <input
            type="radio"
            name={`${axle}-layout`}
            value={layout}
            checked={layout === value}
            onChange={() => onChange(layout)}
          />
          <LayoutSilhouette axle={axle} layout={layout} />
          <span>{LAYOUT_WORDS[layout]}</span>
        </label>
      ))}
    </div>
  </fieldset>
);
