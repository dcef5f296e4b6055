import { getRouteApi } from "@tanstack/react-router";
import { useCallback, useMemo } from "react";
import type { CornerMatch } from "#casework";
import { drawTravelPlots } from "#drawing";
import type { Corner } from "../car.ts";
import { Choice } from "../choices/choice.tsx";
import { cornerKeys } from "../choices/corner-keys.ts";
import { ComputedPage } from "../geometry/computed-page.tsx";
import { NoAnswer } from "../geometry/no-answer.tsx";
import { FittedScene, type SceneRoom } from "../scene/fitted-scene.tsx";
import { FindingsList } from "../shell/findings-list.tsx";
import { CORNERS } from "../travel/travel-search.ts";
import { familyTitleBlock } from "../underside/family-title-block.ts";
import { LEAST_ROWS, rowName } from "./match-entries.ts";
import { MatchForm } from "./match-form.tsx";
import { MatchMargin } from "./match-margin.tsx";
import { useMatch } from "./use-match.ts";
import { type MatchView, useMatchView } from "./use-match-view.ts";
import "./match.css";

const matchRoute = getRouteApi("/families/$familyId/match");
const leastHeight = () => 400;

const Curves = ({ match }: { readonly match: CornerMatch }) => {
  const draw = useCallback(
    (room: SceneRoom) =>
      drawTravelPlots({ plots: match.plots, rows: [], poses: [], sentences: [match.sentence] }, { ...room, at: 0 }),
    [match],
  );
  return <FittedScene draw={draw} leastHeight={leastHeight} />;
};

/** A finding's place as the page names it. */
const pathWords = (path: string): string | null => {
  const [, index, key] = /^readings\[(\d+)\]\.(travel|camber|toe)$/.exec(path) ?? [];
  if (index !== undefined) {
    const what = { travel: "hub centre to arch", camber: "camber", toe: "toe" }[key ?? ""] ?? "";
    return `${rowName(Number(index))}, ${what}${key === "travel" ? ", from ride height" : ""}`;
  }
  if (path === "readings") return "Readings";
  return path.startsWith("lengths[") ? "A length from the bench" : null;
};

/** What is said of an axle that cannot be matched, before anything is typed. */
const OfBodies = () => (
  <>
    <h2 className="heading">Not for this layout yet</h2>
    <p className="margin-lead">
      The linkage of this axle is one of several bodies. Fitting readings to it needs the derivatives of every figure by
      its points, which are not computed for such a linkage. Underside, Geometry and Over travel compute with it; the
      other axle can be matched.
    </p>
  </>
);

const Missing = ({ view }: { readonly view: MatchView }) => (
  <>
    <h2 className="heading">Match it to its own readings</h2>
    <p className="margin-lead">
      {view.whole === 0
        ? "Type hub centre to arch with camber or toe at three heights or more. Here will stand which figures become printable, which coordinates they are owed to, and what stays open."
        : view.whole >= LEAST_ROWS
          ? `${view.whole} whole rows. What is typed beside them is to be put right or taken out first: nothing typed is passed over.`
          : `${view.whole === 1 ? "One whole row" : `${view.whole} whole rows`}; ${LEAST_ROWS} are needed, each a height with camber or toe.`}
    </p>
    {view.troubles.length === 0 ? null : (
      <ul className="match-troubles">
        {view.troubles.map(({ where, said }) => (
          <li key={where}>
            <strong>{where}</strong> <span className="label">{said}</span>
          </li>
        ))}
      </ul>
    )}
    <p className="margin-lead">Toe is that of this wheel against the middle line of the car, not of both wheels.</p>
  </>
);

/** Matching a car line to one car's own camber and toe at several heights, and to lengths from the bench. */
export const MatchPage = () => {
  const view = useMatchView();
  const { lines } = matchRoute.useLoaderData();
  const { family, corner } = view;
  const { answer, busy, ended, stop } = useMatch(view.asked);
  const shown = view.asked === null ? null : answer;
  const match = shown !== null && "match" in shown && shown.match.corner === corner ? shown.match : null;
  const words = corner.replace("-", " ");
  const isOfBodies = family[corner.startsWith("front") ? "front" : "rear"].bodies !== undefined;
  const taken = useMemo(
    () =>
      lines.examples.some(({ id }) => id === family.id)
        ? null
        : {
            ids: [...lines.families, ...lines.examples].map(({ id }) => id),
            names: [...lines.families, ...lines.examples].map(({ name }) => name),
          },
    [lines, family.id],
  );
  const { chooseCorner } = view;
  const keys = useMemo(() => cornerKeys(chooseCorner), [chooseCorner]);
  return (
    <ComputedPage
      name={family.name}
      sub={`matched to its readings, ${words}`}
      titleBlock={familyTitleBlock(family, { title: `Matching, ${words}`, sheet: "7 of 7", scale: null })}
      keys={keys}
      waiting={busy ? { doing: "Looking for the points that explain the readings", stop } : null}
      margin={
        isOfBodies ? (
          <OfBodies />
        ) : match !== null ? (
          <MatchMargin view={view} match={match} taken={taken} />
        ) : shown !== null && "findings" in shown ? (
          <>
            <h2 className="heading">Not matched</h2>
            <FindingsList findings={shown.findings} nameOf={pathWords} />
          </>
        ) : view.asked === null ? (
          <Missing view={view} />
        ) : (
          <NoAnswer ended={ended} doing="The points are being looked for." again="Change an entry" />
        )
      }
      choices={{
        label: "Corner",
        of: (
          <Choice
            label="Corner"
            value={corner}
            options={CORNERS.map((one) => ({ value: one, words: one.replace("-", " ") }))}
            onChoose={(value) => chooseCorner(value as Corner)}
          />
        ),
      }}
      drawing={{
        label: "Readings and curves",
        className: "match-drawing",
        of: isOfBodies ? (
          <p className="match-later">A linkage of several bodies is not matched to readings.</p>
        ) : (
          <>
            <MatchForm view={view} />
            {match === null ? (
              <p className="match-later">The curves before and after will stand here.</p>
            ) : (
              <Curves match={match} />
            )}
          </>
        ),
      }}
    />
  );
};
