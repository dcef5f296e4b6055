import { useId } from "react";
import { fullName } from "#drawing";
import { formatMark } from "../underside/marks-in-address.ts";
import { partFaultOfMark } from "../underside/position-mark.ts";
import { possibleFaultsAt } from "../underside/rubber-at.ts";
import type { Geometry } from "./use-geometry.ts";
import { viewOptionsOf } from "./view-options.ts";

const NONE = "";

/** What it is looked at as; the mark on the underside stays as it is. */
const ViewChoice = ({ geometry }: { readonly geometry: Geometry }) => {
  const id = useId();
  const { family, position, mark, shown } = geometry;
  if (position === null) return null;
  const marked = partFaultOfMark(mark);
  const options = viewOptionsOf(possibleFaultsAt(family, position), [marked, shown]);
  const markedKey = marked === null ? null : formatMark(marked);
  return (
    <>
      <label htmlFor={id}>looked at as</label>
      <select
        id={id}
        value={shown === null ? NONE : formatMark(shown)}
        onChange={(event) => geometry.lookAs(options.find(({ key }) => key === event.target.value)?.fault ?? null)}
      >
        {shown === null ? <option value={NONE}>choose: nothing is marked here</option> : null}
        {options.map(({ key, words }) => (
          <option key={key} value={key}>
            {words}
            {key === markedKey ? " (as marked)" : ""}
          </option>
        ))}
      </select>
    </>
  );
};

/** Which rubber is looked at, and as what. */
export const SubjectChoice = ({ geometry }: { readonly geometry: Geometry }) => {
  const id = useId();
  const { positions, position } = geometry;
  return (
    <div className="subject">
      <label htmlFor={id}>Place</label>
      <select
        id={id}
        value={position?.id ?? NONE}
        onChange={(event) => {
          if (event.target.value !== NONE) geometry.choosePosition(event.target.value);
        }}
      >
        {position === null ? <option value={NONE}>choose a place</option> : null}
        {positions.map((entry) => (
          <option key={entry.id} value={entry.id}>
            {fullName(entry)}
          </option>
        ))}
      </select>
      <ViewChoice geometry={geometry} />
    </div>
  );
};
