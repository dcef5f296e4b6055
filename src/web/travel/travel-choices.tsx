import type { Corner, Position } from "../car.ts";
import { Choice } from "../choices/choice.tsx";
import type { FamilyLine } from "../server/family-list.ts";
import { FigureChoices, FULL, LoweredChoice, NONE } from "./line-choices.tsx";
import { MOST_LINES } from "./line-search.ts";
import { CORNERS, EVERY_RUBBER } from "./travel-search.ts";
import type { TravelView } from "./use-travel-view.ts";

const placeOptions = (positions: readonly Position[], shut: boolean) => [
  { value: NONE, words: shut ? FULL : "none" },
  ...positions.map((position) => ({ value: position.id, words: position.label })),
];
const cornerWords = (corner: string): string => corner.replace("-", " ");

/** Which corner, which lines beside the sound one, and which two figures. */
export const TravelChoices = ({
  view,
  lines,
}: {
  readonly view: TravelView;
  readonly lines: readonly FamilyLine[];
}) => {
  const { search, change, corner } = view;
  const full = view.question.subjects.length >= MOST_LINES;
  const lowered = search.lowered_mm;
  const shut = {
    torn: full && search.torn === undefined,
    firmer: full && search.firmer === undefined,
    lowered: full && lowered === undefined,
    beside: full && search.beside === undefined,
  };
  const others = lines.filter((line) => !("findings" in line) && line.id !== view.family.id);
  return (
    <>
      <Choice
        label="Corner"
        value={corner}
        options={CORNERS.map((one) => ({ value: one, words: cornerWords(one) }))}
        onChoose={(value) => view.chooseCorner(value as Corner)}
      />
      <Choice
        label="Torn"
        value={search.torn ?? NONE}
        options={placeOptions(view.tearable, shut.torn)}
        disabled={shut.torn}
        onChoose={(value) => change({ torn: value || undefined })}
      />
      <Choice
        label="Firmer"
        value={search.firmer ?? NONE}
        options={[...placeOptions(view.stiffenable, shut.firmer), { value: EVERY_RUBBER, words: "every rubber" }]}
        disabled={shut.firmer}
        onChoose={(value) => change(value === NONE ? { firmer: undefined, firmer_by: undefined } : { firmer: value })}
      />
      <LoweredChoice lowered={lowered} shut={shut.lowered} onChoose={(mm) => change({ lowered_mm: mm })} />
      <Choice
        label="Beside"
        value={search.beside ?? NONE}
        options={[
          { value: NONE, words: shut.beside ? FULL : "no other" },
          ...others.map(({ id, name }) => ({ value: id, words: name })),
        ]}
        disabled={shut.beside}
        onChoose={(value) => change({ beside: value || undefined })}
      />
      <FigureChoices figures={view.question.figures} onChoose={(place, figure) => change({ [place]: figure })} />
    </>
  );
};
