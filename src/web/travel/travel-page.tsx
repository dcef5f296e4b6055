import { getRouteApi } from "@tanstack/react-router";
import { useCallback, useMemo, useState } from "react";
import { cornerKeys } from "../choices/corner-keys.ts";
import { conditionPathWords } from "../effect/condition-path-words.ts";
import { ComputedPage } from "../geometry/computed-page.tsx";
import { ConditionSliders } from "../geometry/condition-sliders.tsx";
import { NoAnswer } from "../geometry/no-answer.tsx";
import { SLIDER_KEYS } from "../geometry/slider-keys.ts";
import { FindingsList } from "../shell/findings-list.tsx";
import { familyTitleBlock } from "../underside/family-title-block.ts";
import { HowFirm } from "./how-firm.tsx";
import { MovingCorner } from "./moving-corner.tsx";
import { TravelChoices } from "./travel-choices.tsx";
import { TravelHead, TravelMargin } from "./travel-margin.tsx";
import { useTravelSheet } from "./use-travel-sheet.ts";
import { type TravelView, useTravelView } from "./use-travel-view.ts";

const travelRoute = getRouteApi("/families/$familyId/travel");

interface MarginOfProps {
  readonly view: TravelView;
  readonly state: ReturnType<typeof useTravelSheet>;
}

const MarginOf = ({ view, state: { answer, asked, ended } }: MarginOfProps) => (
  <>
    {view.strangers.map((id) => (
      <p key={id} className="margin-notice">
        {id} is not on this corner or not on the list, so it has no line.
      </p>
    ))}
    {view.leftOut === null ? null : (
      <p className="margin-notice">Four lines are drawn already, so {view.leftOut} has none.</p>
    )}
    {answer === null ? (
      <NoAnswer ended={ended} doing="Each state is balanced at every height." again="Choose or move anything" />
    ) : "findings" in answer ? (
      <FindingsList findings={answer.findings} nameOf={conditionPathWords} />
    ) : (
      <TravelHead sheet={answer.sheet} />
    )}
    {/* Stands at one place of the margin whatever the answer is, so that a field keeps the keyboard while it is typed in. */}
    <HowFirm view={view} />
    {answer === null || "findings" in answer || asked === null ? null : (
      <TravelMargin view={view} sheet={answer.sheet} asked={asked} />
    )}
  </>
);

/** Over travel: figures of one corner for up to four states beside each other, and the corner in space. */
export const TravelPage = () => {
  const view = useTravelView();
  const { lines } = travelRoute.useLoaderData();
  const { family, corner, condition, question, setCondition, chooseCorner } = view;
  const state = useTravelSheet(question);
  const { answer, asked, busy, stop } = state;
  const [scale, setScale] = useState<string | null>(null);
  const reset = useCallback(() => setCondition({ ...condition, contactRise: 0, rack: 0 }), [setCondition, condition]);
  const keys = useMemo(
    () => [...cornerKeys(chooseCorner), { key: "0", does: "back to ride height, wheels straight", run: reset }],
    [chooseCorner, reset],
  );
  const sheet = answer !== null && "sheet" in answer ? answer.sheet : null;
  const words = corner.replace("-", " ");
  return (
    <ComputedPage
      name={family.name}
      sub={`over travel, ${words}`}
      titleBlock={familyTitleBlock(family, { title: `Over travel, ${words}`, sheet: "4 of 7", scale })}
      keys={keys}
      fieldKeys={SLIDER_KEYS}
      waiting={busy ? { doing: "Balancing each state at every height", stop } : null}
      margin={<MarginOf view={view} state={state} />}
      choices={{ label: "Lines and figures", of: <TravelChoices view={view} lines={lines} /> }}
      drawing={{
        label: "The corner and its curves",
        className: "travel-drawing",
        of:
          sheet === null || asked === null ? null : (
            <MovingCorner sheet={sheet} asked={asked} eye={view.eye} setEye={view.setEye} onScale={setScale} />
          ),
      }}
      sliders={
        <ConditionSliders
          axle={family[corner.startsWith("front") ? "front" : "rear"]}
          condition={condition}
          onChange={setCondition}
        />
      }
    />
  );
};
