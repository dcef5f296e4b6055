import { useCallback, useMemo, useState } from "react";
import { type Condition, formatNumber } from "#casework";
import type { Finding } from "#contract";
import { metresFromMm, mmFromMetres } from "#quantity";
import { ComputedPage } from "../geometry/computed-page.tsx";
import { NoAnswer } from "../geometry/no-answer.tsx";
import { Slider } from "../geometry/slider.tsx";
import { SLIDER_KEYS } from "../geometry/slider-keys.ts";
import { FindingsList } from "../shell/findings-list.tsx";
import { BodiesChoices } from "./bodies-choices.tsx";
import { BodiesDrawn } from "./bodies-drawn.tsx";
import { BodiesMargin, LayoutSource } from "./bodies-margin.tsx";
import { FaultAmount } from "./fault-amount.tsx";
import { HeldDrawn } from "./held-drawn.tsx";
import { HeldMargin } from "./held-margin.tsx";
import { layoutPathWords } from "./layout-path-words.ts";
import { useBodies, useBodiesHold } from "./use-bodies.ts";
import { type BodiesView, useBodiesView } from "./use-bodies-view.ts";
import "../hold/hold.css";
import "../travel/travel.css";
import "./bodies.css";

const MOST_TRAVEL_MM = 80;
const MOST_BRAKING_N = 4000;
const MOST_SIDE_N = 3000;
const FORCE_STEP = 100;

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

/** The margin while there is nothing to show: what is wrong, or that it is being computed. */
const Without = ({ view, findings }: { readonly view: BodiesView; readonly findings: readonly Finding[] }) => (
  <>
    {view.fault === null ? null : <h2 className="heading">What the {view.fault.kind} one does</h2>}
    <FaultAmount view={view} />
    <FindingsList findings={findings} nameOf={layoutPathWords} />
    <LayoutSource view={view} />
  </>
);

/** Over travel: the suspension, its curves and what they say. */
const useOverTravel = (view: BodiesView) => {
  const { answer, asked, busy, ended, stop } = useBodies(view.search.show === "hold" ? null : view.asked);
  const sheet = answer !== null && "sheet" in answer ? answer.sheet : null;
  return {
    invented: sheet?.invented ?? false,
    waiting: busy ? { doing: "Balancing all bodies at every height", stop } : null,
    margin:
      answer === null ? (
        <NoAnswer ended={ended} doing="All bodies are balanced at every height." again="Move anything" />
      ) : "findings" in answer ? (
        <Without view={view} findings={answer.findings} />
      ) : asked === null ? null : (
        <BodiesMargin view={view} sheet={answer.sheet} asked={asked} />
      ),
    drawing: (onScale: (scale: string | null) => void) =>
      sheet === null ? null : <BodiesDrawn view={view} sheet={sheet} onScale={onScale} />,
  };
};

/** How it is held: forces in its joints, where play shows, what a hand moves. */
const useHeld = (view: BodiesView) => {
  const { search, read, fault } = view;
  const file = "file" in read ? read.file : null;
  const isShown = search.show === "hold";
  const asked = useMemo(() => (isShown && file !== null ? { file, fault } : null), [isShown, file, fault]);
  const { answer, busy, ended, stop } = useBodiesHold(asked);
  const hold = answer !== null && "hold" in answer ? answer.hold : null;
  const state = hold?.states.find(({ key }) => key === search.held) ?? hold?.states[0];
  return {
    waiting: busy ? { doing: "Holding it in every way", stop } : null,
    margin:
      answer === null ? (
        <NoAnswer ended={ended} doing="It is held in every way, as drawn and as it may be." again="Choose anything" />
      ) : "findings" in answer ? (
        <Without view={view} findings={answer.findings} />
      ) : state === undefined ? null : (
        <HeldMargin view={view} hold={answer.hold} state={state} />
      ),
    drawing: (onScale: (scale: string | null) => void) =>
      hold === null || state === undefined ? null : (
        <HeldDrawn view={view} hold={hold} state={state} onScale={onScale} />
      ),
  };
};

/** A layout from a file: a suspension of any number of bodies, drawn, moved, held, and with one of its places at fault. */
export const BodiesPage = () => {
  const view = useBodiesView();
  const { read, condition, setCondition, search } = view;
  const travel = useOverTravel(view);
  const held = useHeld(view);
  const isHold = search.show === "hold";
  const shown = isHold ? held : travel;
  const [scale, setScale] = useState<string | null>(null);
  const reset = useCallback(() => setCondition({ ...condition, contactRise: 0 }), [setCondition, condition]);
  const keys = useMemo(() => [{ key: "0", does: "back to ride height", run: reset }], [reset]);
  const isInvented = "file" in read && /\binvented\b/i.test(read.file.note);
  const name = "file" in read ? read.file.layout.name : "A layout from a file";
  const bodies = "file" in read ? String(read.file.layout.bodies.length) : "not read";
  return (
    <ComputedPage
      name={name}
      sub={isHold ? "a layout from a file, held" : "a layout from a file"}
      keys={isHold ? [] : keys}
      fieldKeys={SLIDER_KEYS}
      titleBlock={{
        title: "A layout from a file",
        note: isInvented ? "everything here is invented" : view.source.name,
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
      waiting={shown.waiting}
      margin={
        "findings" in read ? (
          <>
            <h2 className="heading">This file cannot be used</h2>
            {read.findings.some(({ code }) => code === "not-json") ? (
              <p className="margin-lead">It is not JSON: a layout is a text file like the example.</p>
            ) : null}
            <FindingsList findings={read.findings} outcome="nothing was changed" />
            <LayoutSource view={view} />
          </>
        ) : (
          shown.margin
        )
      }
      choices={{ label: "What is looked at", of: "file" in read ? <BodiesChoices view={view} /> : null }}
      drawing={{
        label: isHold ? "The suspension held, and its joints" : "The suspension and its curves",
        className: isHold ? "travel-drawing bodies-drawing bodies-held" : "travel-drawing bodies-drawing",
        of: "file" in read ? shown.drawing(setScale) : null,
      }}
      sliders={isHold ? null : <Sliders view={view} />}
    />
  );
};
