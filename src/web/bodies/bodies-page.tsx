import { useCallback, useMemo, useState } from "react";
import { type BodiesSheet, type Condition, formatNumber, rubberWords } from "#casework";
import { drawBodies, drawTravelPlots } from "#drawing";
import { metresFromMm, mmFromMetres } from "#quantity";
import { Choice } from "../choices/choice.tsx";
import { conditionPathWords } from "../effect/condition-path-words.ts";
import { ComputedPage } from "../geometry/computed-page.tsx";
import { EyeSliders } from "../geometry/eye-sliders.tsx";
import { NoAnswer } from "../geometry/no-answer.tsx";
import { Slider } from "../geometry/slider.tsx";
import { SLIDER_KEYS } from "../geometry/slider-keys.ts";
import { FittedScene, type SceneRoom } from "../scene/fitted-scene.tsx";
import { FindingsList } from "../shell/findings-list.tsx";
import { BodiesMargin, LayoutSource } from "./bodies-margin.tsx";
import { useBodies } from "./use-bodies.ts";
import { type BodiesView, rubberKey, useBodiesView } from "./use-bodies-view.ts";
import "../travel/travel.css";
import "./bodies.css";

const NONE = "";
const leastHeight = () => 360;
const leastCorner = () => 230;
const MOST_TRAVEL_MM = 80;
const MOST_BRAKING_N = 4000;
const MOST_SIDE_N = 3000;
const FORCE_STEP = 100;

interface DrawnProps {
  readonly view: BodiesView;
  readonly sheet: BodiesSheet;
  readonly onScale: (scale: string | null) => void;
}

/** The suspension in space, turned by two sliders, beside its curves. */
const Drawn = ({ view: { eye, setEye, condition }, sheet, onScale }: DrawnProps) => {
  const { placed, tornPlaced, torn } = sheet;
  const drawSpace = useCallback(
    (room: SceneRoom) => {
      if (placed === null) throw new Error("nothing is placed");
      return drawBodies(placed, { ...room, eye, beside: tornPlaced, torn });
    },
    [placed, tornPlaced, torn, eye],
  );
  const drawPlots = useCallback(
    (room: SceneRoom) =>
      drawTravelPlots(
        { plots: sheet.plots, rows: [], poses: [], sentences: [sheet.sentence] },
        { ...room, at: condition.contactRise },
      ),
    [sheet, condition.contactRise],
  );
  return (
    <>
      <p className="bodies-sentence">{sheet.sentence}</p>
      <div className="travel-corner">
        {placed === null ? (
          <p className="lead">At this travel it finds no balance.</p>
        ) : (
          <FittedScene draw={drawSpace} leastHeight={leastCorner} onScale={onScale} />
        )}
        <EyeSliders eye={eye} onChange={setEye} />
      </div>
      <div className="travel-curves">
        <FittedScene draw={drawPlots} leastHeight={leastHeight} />
      </div>
    </>
  );
};

const newtons = (value: number): string => `${formatNumber(value / 1000, 1)} kN`;

const Sliders = ({ view: { condition, setCondition } }: { readonly view: BodiesView }) => {
  const rise = Math.round(mmFromMetres(condition.contactRise));
  const change = (part: Partial<Condition>) => setCondition({ ...condition, ...part });
  return (
    <>
      <Slider
        label="Travel"
        value={rise}
        low={-MOST_TRAVEL_MM}
        high={MOST_TRAVEL_MM}
        step={1}
        said={rise === 0 ? "0 mm, ride height" : `${rise > 0 ? "+" : ""}${formatNumber(rise, 0)} mm`}
        lowSaid={`${MOST_TRAVEL_MM} droop`}
        highSaid={`${MOST_TRAVEL_MM} bump`}
        onChange={(mm) => change({ contactRise: metresFromMm(mm) })}
      />
      <Slider
        label="Braking at this wheel"
        value={condition.braking}
        low={0}
        high={MOST_BRAKING_N}
        step={FORCE_STEP}
        said={newtons(condition.braking)}
        lowSaid="0"
        highSaid={`${newtons(MOST_BRAKING_N)} rearward`}
        onChange={(braking) => change({ braking })}
      />
      <Slider
        label="Side force"
        value={condition.lateral}
        low={-MOST_SIDE_N}
        high={MOST_SIDE_N}
        step={FORCE_STEP}
        said={newtons(condition.lateral)}
        lowSaid="to the right"
        highSaid="to the left"
        onChange={(lateral) => change({ lateral })}
      />
    </>
  );
};

const TornChoice = ({ view }: { readonly view: BodiesView }) => (
  <Choice
    label="Torn"
    value={view.torn === null ? NONE : rubberKey(view.torn)}
    options={[
      { value: NONE, words: "none" },
      ...("file" in view.read
        ? view.read.file.elasticity.rubber.map((rubber) => ({ value: rubberKey(rubber), words: rubberWords(rubber) }))
        : []),
    ]}
    onChoose={view.chooseTorn}
  />
);

/** A layout from a file: a suspension of any number of bodies, drawn, moved, and with one of its rubbers torn. */
export const BodiesPage = () => {
  const view = useBodiesView();
  const { read, condition, setCondition } = view;
  const { answer, busy, ended, stop } = useBodies(view.asked);
  const [scale, setScale] = useState<string | null>(null);
  const reset = useCallback(() => setCondition({ ...condition, contactRise: 0 }), [setCondition, condition]);
  const keys = useMemo(() => [{ key: "0", does: "back to ride height", run: reset }], [reset]);
  const sheet = "file" in read && answer !== null && "sheet" in answer ? answer.sheet : null;
  const name = "file" in read ? read.file.layout.name : "A layout from a file";
  const bodies = "file" in read ? String(read.file.layout.bodies.length) : "not read";
  return (
    <ComputedPage
      name={name}
      sub="a layout from a file"
      keys={keys}
      fieldKeys={SLIDER_KEYS}
      titleBlock={{
        title: "A layout from a file",
        note: sheet?.invented ? "everything here is invented" : view.source.name,
        rows: [
          [{ label: "Layout", value: name }],
          [
            { label: "Moving bodies", value: bodies },
            ...(scale === null ? [] : [{ label: "Scale", value: scale }]),
            { label: "Units", value: "mm, °, N" },
            { label: "Sheet", value: "1 of 1" },
          ],
        ],
      }}
      waiting={busy ? { doing: "Balancing all bodies at every height", stop } : null}
      margin={
        "findings" in read ? (
          <>
            <h2 className="heading">This file cannot be used</h2>
            <FindingsList findings={read.findings} outcome="nothing was changed" />
            <LayoutSource view={view} />
          </>
        ) : answer === null ? (
          <NoAnswer ended={ended} doing="All bodies are balanced at every height." again="Move anything" />
        ) : "findings" in answer ? (
          <>
            <FindingsList findings={answer.findings} nameOf={conditionPathWords} />
            <LayoutSource view={view} />
          </>
        ) : (
          <BodiesMargin view={view} sheet={answer.sheet} />
        )
      }
      choices={{ label: "What is torn", of: <TornChoice view={view} /> }}
      drawing={{
        label: "The suspension and its curves",
        className: "travel-drawing bodies-drawing",
        of: sheet === null ? null : <Drawn view={view} sheet={sheet} onScale={setScale} />,
      }}
      sliders={<Sliders view={view} />}
    />
  );
};
