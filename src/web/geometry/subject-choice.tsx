import { Choice } from "../choices/choice.tsx";
import { formatMark } from "../underside/marks-in-address.ts";
import { partFaultOfMark } from "../underside/position-mark.ts";
import { possibleFaultsAt } from "../underside/rubber-at.ts";
import { LineChoices } from "./line-choices.tsx";
import { PlaceChoice } from "./place-choice.tsx";
import type { Geometry } from "./use-geometry.ts";
import { viewOptionsOf } from "./view-options.ts";

const NONE = "";

/** What it is looked at as; the mark on the underside stays as it is. */
export const ViewChoice = ({ geometry }: { readonly geometry: Geometry }) => {
  const { family, position, mark, shown } = geometry;
  if (position === null) return null;
  const marked = partFaultOfMark(mark);
  const options = viewOptionsOf(possibleFaultsAt(family, position), [marked, shown]);
  const markedKey = marked === null ? null : formatMark(marked);
  return (
    <Choice
      label="looked at as"
      value={shown === null ? NONE : formatMark(shown)}
      options={[
        ...(shown === null ? [{ value: NONE, words: "choose: nothing is marked here" }] : []),
        ...options.map(({ key, words }) => ({
          value: key,
          words: `${words}${key === markedKey ? " (as marked)" : ""}`,
        })),
      ]}
      onChoose={(key) => geometry.lookAs(options.find((option) => option.key === key)?.fault ?? null)}
    />
  );
};

/** Which rubber is looked at, as what, and what is drawn besides. */
export const SubjectChoice = ({ geometry }: { readonly geometry: Geometry }) => (
  <div className="subject picks">
    <PlaceChoice geometry={geometry} />
    <ViewChoice geometry={geometry} />
    <LineChoices geometry={geometry} />
  </div>
);
