import { fullName } from "#drawing";
import { Choice } from "../choices/choice.tsx";
import type { Geometry } from "./use-geometry.ts";

const NONE = "";

/** Which rubber is looked at. */
export const PlaceChoice = ({ geometry }: { readonly geometry: Geometry }) => {
  const { positions, position } = geometry;
  return (
    <Choice
      label="Place"
      value={position?.id ?? NONE}
      options={[
        ...(position === null ? [{ value: NONE, words: "choose a place" }] : []),
        ...positions.map((entry) => ({ value: entry.id, words: fullName(entry) })),
      ]}
      onChoose={(id) => {
        if (id !== NONE) geometry.choosePosition(id);
      }}
    />
  );
};
