import type { RubberFault } from "#casework";
import { Choice } from "../choices/choice.tsx";
import { FigureChoices, FULL, LoweredChoice, NONE } from "../travel/line-choices.tsx";
import { formatMark } from "../underside/marks-in-address.ts";
import { balancedFault } from "../underside/position-mark.ts";
import { possibleFaultsAt } from "../underside/rubber-at.ts";
import type { Geometry } from "./use-geometry.ts";
import { viewOptionsOf } from "./view-options.ts";

const KINDS: readonly RubberFault["kind"][] = ["torn", "loose", "firmer"];

/** "torn, repair first" behind the name of its kind. */
const withoutKind = (words: string): string => words.replace(/^(torn|loose|firmer),? /, "");

/** What the place is drawn as besides, kind by kind; the kind it is looked at as is left out. */
const AlsoChoices = ({ geometry }: { readonly geometry: Geometry }) => {
  const { family, position, shown, lines } = geometry;
  if (position === null || shown === null || shown.kind === "fluid-gone") return null;
  const options = viewOptionsOf(possibleFaultsAt(family, position), [...lines.also]);
  return KINDS.filter((kind) => kind !== shown.kind).map((kind) => {
    const own = options.filter(({ fault }) => fault.kind === kind);
    if (own.length === 0) return null;
    const chosen = lines.also.find((fault) => fault.kind === kind);
    const shut = lines.full && chosen === undefined;
    return (
      <Choice
        key={kind}
        label={`Also ${kind}`}
        value={chosen === undefined ? NONE : formatMark(chosen)}
        options={[
          { value: NONE, words: shut ? FULL : "no" },
          ...own.map(({ key, words }) => ({ value: key, words: withoutKind(words) })),
        ]}
        disabled={shut}
        onChoose={(key) =>
          lines.chooseAlso(kind, balancedFault(own.find((option) => option.key === key)?.fault ?? null))
        }
      />
    );
  });
};

/** What is drawn besides sound and what the place is looked at as, and which two figures. */
export const LineChoices = ({ geometry }: { readonly geometry: Geometry }) => {
  const { shown, lines } = geometry;
  if (shown?.kind === "fluid-gone") return null;
  return (
    <>
      <AlsoChoices geometry={geometry} />
      <LoweredChoice
        lowered={lines.lowered}
        shut={lines.full && lines.lowered === undefined}
        onChoose={lines.chooseLowered}
      />
      <FigureChoices figures={lines.figures} onChoose={lines.chooseFigure} />
    </>
  );
};
