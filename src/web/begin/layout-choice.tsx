import { type AxleName, type LayoutName, silhouetteLayouts } from "#vehicle";
import { LAYOUT_WORDS } from "../families/layout-words.ts";
import { LayoutSilhouette } from "./layout-silhouette.tsx";

interface LayoutChoiceProps {
  readonly axle: AxleName;
  readonly value: LayoutName;
  readonly onChange: (layout: LayoutName) => void;
}

/** Which layout an axle has, chosen by how it looks from below. */
export const LayoutChoice = ({ axle, value, onChange }: LayoutChoiceProps) => (
  <fieldset className="layouts">
    <legend>{axle === "front" ? "Front axle" : "Rear axle"}</legend>
    <div className="layout-row">
      {silhouetteLayouts[axle].map((layout) => (
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
