import { type TravelFigure, travelFigureForms } from "#casework";
import { Choice } from "../choices/choice.tsx";

export const NONE = "";
const LOWERED_MM = [10, 15, 20, 25, 30, 40, 50];

/** Said in place of "none" where no further line can be had. */
export const FULL = "four lines already";

interface LoweredChoiceProps {
  readonly lowered: number | undefined;
  /** There are as many lines as can be drawn, and this is none of them. */
  readonly shut: boolean;
  readonly onChoose: (mm: number | undefined) => void;
}

/** How far the body is lowered in a line of its own. */
export const LoweredChoice = ({ lowered, shut, onChoose }: LoweredChoiceProps) => {
  const heights = lowered === undefined || LOWERED_MM.includes(lowered) ? LOWERED_MM : [...LOWERED_MM, lowered];
  return (
    <Choice
      label="Lowered"
      value={lowered === undefined ? NONE : String(lowered)}
      options={[
        { value: NONE, words: shut ? FULL : "no" },
        ...heights.map((mm) => ({ value: String(mm), words: `${mm} mm` })),
      ]}
      disabled={shut}
      onChoose={(value) => onChoose(value === NONE ? undefined : Number(value))}
    />
  );
};

interface FigureChoicesProps {
  readonly figures: readonly TravelFigure[];
  readonly onChoose: (place: "first" | "second", figure: string) => void;
}

/** Which two figures are drawn over travel. */
export const FigureChoices = ({ figures, onChoose }: FigureChoicesProps) => {
  const options = travelFigureForms.map(({ figure, name }) => ({ value: figure, words: name }));
  return (
    <>
      <Choice
        label="First"
        value={figures[0] ?? "toe"}
        options={options}
        onChoose={(value) => onChoose("first", value)}
      />
      <Choice
        label="Second"
        value={figures[1] ?? "camber"}
        options={options}
        onChoose={(value) => onChoose("second", value)}
      />
    </>
  );
};
