import type { Hold } from "#casework";
import type { Corner } from "../car.ts";
import { Choice } from "../choices/choice.tsx";
import { CORNERS } from "../travel/travel-search.ts";
import { HAND_WAY_WORDS } from "./hand-way-words.ts";
import { HAND_WAYS } from "./hold-search.ts";
import type { HoldView } from "./use-hold-view.ts";

const NONE = "";

/** "torn, repair first"; "loose, 1 mm assumed" */
const faultName = (fault: string): string => {
  const [kind, amount = ""] = fault.split("-");
  if (kind === "loose") return `loose by ${amount} mm, assumed`;
  return `torn, ${["", "watch", "plan", "repair first"][Number(amount)] ?? amount}`;
};

interface HoldChoicesProps {
  readonly view: HoldView;
  readonly hold: Hold | null;
  /** Key of the state that is shown. */
  readonly state: string | null;
}

/** Which corner, how it is held, which joint as what, by which hand. */
export const HoldChoices = ({ view, hold, state }: HoldChoicesProps) => {
  const { change, selected, fault, offered } = view;
  const faults = fault === null || offered.includes(fault) ? offered : [...offered, fault];
  return (
    <>
      <Choice
        label="Corner"
        value={view.corner}
        options={CORNERS.map((one) => ({ value: one, words: one.replace("-", " ") }))}
        onChoose={(corner) => view.chooseCorner(corner as Corner)}
      />
      <Choice
        label="Held"
        value={state ?? NONE}
        options={(hold?.states ?? []).map(({ key, title }) => ({ value: key, words: title.toLowerCase() }))}
        onChoose={(held) => change({ held })}
      />
      <Choice
        label="Joint"
        value={selected?.id ?? NONE}
        options={[
          { value: NONE, words: "none chosen" },
          ...view.joints.map(({ id, label }) => ({ value: id, words: label })),
        ]}
        onChoose={(at) => change({ at: at || undefined, as: undefined, held: undefined })}
      />
      {selected === null || fault === null ? null : (
        <>
          <Choice
            label="as"
            value={fault}
            options={faults.map((one) => ({ value: one, words: faultName(one) }))}
            onChoose={(as) => change({ as })}
          />
          <Choice
            label="by"
            value={view.way}
            options={HAND_WAYS.map((way) => ({ value: way, words: HAND_WAY_WORDS[way] }))}
            onChoose={(way) => change({ way, by: undefined })}
          />
        </>
      )}
    </>
  );
};
