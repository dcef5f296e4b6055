import { Choice } from "../choices/choice.tsx";
import type { LookedAtAs } from "./bodies-search.ts";
import { placesOf } from "./looked-at.ts";
import type { BodiesView } from "./use-bodies-view.ts";

const NONE = "";
const AS_WORDS: Readonly<Record<LookedAtAs, string>> = { torn: "torn", loose: "loose", firmer: "firmer" };

/** Which place is looked at, as what, and whether its curves are shown or how it is held. */
export const BodiesChoices = ({ view }: { readonly view: BodiesView }) => {
  const { place, fault, search, change } = view;
  const places = "file" in view.read ? placesOf(view.read.file) : [];
  const isHold = search.show === "hold";
  return (
    <>
      <Choice
        label="Place"
        value={place?.key ?? NONE}
        options={[{ value: NONE, words: "none" }, ...places.map(({ key, words }) => ({ value: key, words }))]}
        onChoose={(key) => change({ at: key === NONE ? undefined : key })}
      />
      {place === null || fault === null ? null : (
        <Choice
          label="As"
          value={fault.kind}
          disabled={place.as.length === 1}
          options={place.as.map((as) => ({ value: as, words: AS_WORDS[as] }))}
          onChoose={(as) => change({ as: as as LookedAtAs })}
        />
      )}
      <Choice
        label="Show"
        value={isHold ? "hold" : "travel"}
        options={[
          { value: "travel", words: "over travel" },
          { value: "hold", words: "how to hold it" },
        ]}
        onChoose={(show) => change({ show: show === "hold" ? "hold" : undefined, held: undefined })}
      />
    </>
  );
};
