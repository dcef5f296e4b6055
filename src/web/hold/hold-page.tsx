import { useCallback, useMemo, useState } from "react";
import { formatForce, formatNumber, type HeldState, type Hold } from "#casework";
import { drawHeldCorner } from "#drawing";
import { cornerKeys } from "../choices/corner-keys.ts";
import { ComputedPage } from "../geometry/computed-page.tsx";
import { NoAnswer } from "../geometry/no-answer.tsx";
import { Slider } from "../geometry/slider.tsx";
import { SLIDER_KEYS } from "../geometry/slider-keys.ts";
import { FittedScene, type SceneRoom } from "../scene/fitted-scene.tsx";
import { FindingsList } from "../shell/findings-list.tsx";
import { familyTitleBlock } from "../underside/family-title-block.ts";
import { HoldChoices } from "./hold-choices.tsx";
import { HoldMargin } from "./hold-margin.tsx";
import { mostOf } from "./hold-search.ts";
import { HoldTable } from "./hold-table.tsx";
import { type AskedHand, useHandTest, useHandWays, useHold } from "./use-hold.ts";
import { type HoldView, useHoldView } from "./use-hold-view.ts";
import "./hold.css";

const leastHeight = (width: number) => (width > 560 ? 340 : 420);
/** Wider than so many times its height, a room takes the three views in a row. */
const WIDE = 1.7;

/** The state asked for; without one the best of the joint looked at, else hanging. */
const stateOf = (view: HoldView, hold: Hold): HeldState | null => {
  const best = hold.best.find(({ position }) => position === view.selected?.id)?.state;
  const wanted = [view.held, best, "hanging", "ride"];
  return wanted.flatMap((key) => hold.states.find((one) => one.key === key) ?? [])[0] ?? null;
};

const isAboutSame = ({ question: a }: AskedHand, { question: b }: AskedHand): boolean =>
  a.position === b.position && JSON.stringify([a.held, a.fault]) === JSON.stringify([b.held, b.fault]);

interface DrawnProps {
  readonly view: HoldView;
  readonly hold: Hold;
  readonly state: HeldState;
  readonly onScale: (scale: string | null) => void;
}

/** The corner as it is held, its joints marked and loaded. */
const Drawn = ({ view, hold, state, onScale }: DrawnProps) => {
  const { family } = view;
  const selected = view.selected?.id ?? null;
  const draw = useCallback(
    (room: SceneRoom) => {
      const most = Math.max(...hold.states.flatMap(({ joints }) => joints.map(({ load }) => load)), 1);
      const arrangement = room.width > WIDE * room.height ? "row" : "angle";
      return drawHeldCorner(family, hold.corner, state, { ...room, selected, format: formatForce, most, arrangement });
    },
    [family, hold, state, selected],
  );
  return <FittedScene draw={draw} leastHeight={leastHeight} onScale={onScale} />;
};

/** Force or moment of the hand, where one is looked at. */
const HandSlider = ({ view }: { readonly view: HoldView }) => {
  const rock = view.way === "12-6" || view.way === "3-9";
  const most = mostOf(view.way);
  const unit = rock ? "N·m" : "N";
  return (
    <Slider
      label={rock ? "Moment of both hands" : view.way === "bar" ? "Force of the bar" : "Force of the push"}
      value={view.by}
      low={10}
      high={most}
      step={10}
      said={`${formatNumber(view.by, 0)} ${unit}`}
      lowSaid={`10 ${unit}`}
      highSaid={`${most} ${unit}`}
      onChange={view.setBy}
    />
  );
};

/** Load states of a corner: how to hold the car so that the play of each joint can be seen, and what a hand tells. */
export const HoldPage = () => {
  const view = useHoldView();
  const { family, corner } = view;
  const loads = useHold(view.asked);
  const hold =
    loads.answer !== null && "hold" in loads.answer && loads.answer.hold.corner === corner ? loads.answer.hold : null;
  const state = hold === null ? null : stateOf(view, hold);
  const key = state?.key ?? null;
  const handIn = view.handIn;
  const asked = useMemo(() => (key === null ? null : handIn(key)), [handIn, key]);
  const hand = useHandTest(asked);
  // An answer about another joint or another hold is not shown while this one is computed.
  const answers = asked !== null && hand.asked !== null && isAboutSame(hand.asked, asked);
  const shown = answers ? hand.answer : null;
  // Where the chosen way does not tell it, the page says which does.
  const unsure = shown !== null && !("findings" in shown) && shown.test.tells !== "yes";
  const { waysIn } = view;
  const waysAsked = useMemo(() => (unsure && key !== null ? waysIn(key) : null), [waysIn, key, unsure]);
  const ways = useHandWays(waysAsked);
  const [scale, setScale] = useState<string | null>(null);
  const words = corner.replace("-", " ");
  const busy = loads.busy || hand.busy;
  const stop = () => {
    ways.stop();
    loads.stop();
    hand.stop();
  };
  const { chooseCorner, bestWay } = view;
  const keys = useMemo(
    () => [...cornerKeys(chooseCorner), { key: "0", does: "back to the best way of holding it", run: bestWay }],
    [chooseCorner, bestWay],
  );
  return (
    <ComputedPage
      name={family.name}
      sub={`how to hold it, ${words}`}
      titleBlock={familyTitleBlock(family, { title: `How to hold it, ${words}`, sheet: "5 of 7", scale })}
      keys={keys}
      fieldKeys={asked === null ? [] : SLIDER_KEYS}
      waiting={busy ? { doing: "Holding the corner in every way, as it may be", stop } : null}
      margin={
        hold !== null && state !== null ? (
          <HoldMargin
            view={view}
            hold={hold}
            state={state}
            hand={shown}
            ways={waysAsked === null ? null : { answers: ways.asked === waysAsked ? ways.answer : null }}
          />
        ) : loads.answer !== null && "findings" in loads.answer ? (
          <FindingsList findings={loads.answer.findings} />
        ) : (
          <NoAnswer
            ended={loads.ended}
            doing="The corner is balanced standing, hanging and on every support."
            again="Choose another corner"
          />
        )
      }
      choices={{ label: "Corner, hold and hand", of: <HoldChoices view={view} hold={hold} state={key} /> }}
      drawing={{
        label: "The corner and its joints",
        className: "hold-drawing",
        of:
          hold === null || state === null ? null : (
            <>
              <p className="hold-sentence">{hold.sentence}</p>
              <Drawn view={view} hold={hold} state={state} onScale={setScale} />
              <div className="hold-joints">
                <HoldTable view={view} hold={hold} state={state} />
              </div>
            </>
          ),
      }}
      sliders={asked === null ? null : <HandSlider view={view} />}
    />
  );
};
