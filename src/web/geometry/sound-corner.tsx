import { useMemo, useState } from "react";
import { formatTravelCsv, type TravelSheet, type TravelSheetQuestion } from "#casework";
import { cornerPositions, fullName } from "#drawing";
import { byQuery } from "../cases/case/recorder.ts";
import { Choice } from "../choices/choice.tsx";
import { cornerKeys } from "../choices/corner-keys.ts";
import { conditionPathWords } from "../effect/condition-path-words.ts";
import { CsvLink } from "../printing/csv-link.tsx";
import { PrintButton } from "../printing/print-button.tsx";
import { GradeMark } from "../scene/grade-mark.tsx";
import { printAskedSheet } from "../server/print-asked-sheet.ts";
import { FindingsList } from "../shell/findings-list.tsx";
import { MarginSection } from "../shell/margin-section.tsx";
import { RowTable } from "../travel/change-table.tsx";
import { MovingCorner } from "../travel/moving-corner.tsx";
import { CORNERS } from "../travel/travel-search.ts";
import { useTravelSheet } from "../travel/use-travel-sheet.ts";
import { familyTitleBlock } from "../underside/family-title-block.ts";
import { ComputedPage } from "./computed-page.tsx";
import { ConditionSliders } from "./condition-sliders.tsx";
import { LineChoices } from "./line-choices.tsx";
import { NoAnswer } from "./no-answer.tsx";
import { PlaceChoice } from "./place-choice.tsx";
import { PlaceLinks } from "./place-links.tsx";
import { SLIDER_KEYS } from "./slider-keys.ts";
import { ViewChoice } from "./subject-choice.tsx";
import type { Geometry } from "./use-geometry.ts";
import { ViewOffer } from "./view-offer.tsx";

/** The places of the corner that can be looked at as torn, loose or firmer. */
const CornerPlaces = ({ geometry }: { readonly geometry: Geometry }) => {
  const own = new Set(cornerPositions(geometry.family, geometry.corner).map(({ id }) => id));
  return (
    <ul className="corner-places">
      {geometry.positions
        .filter(({ id }) => own.has(id))
        .map((place) => (
          <li key={place.id}>
            <button type="button" className="link" onClick={() => geometry.choosePosition(place.id)}>
              {place.label}
            </button>
          </li>
        ))}
    </ul>
  );
};

interface SoundMarginProps {
  readonly geometry: Geometry;
  readonly sheet: TravelSheet | null;
  /** The question the sheet answers. */
  readonly asked: TravelSheetQuestion | null;
}

/** What stands in the margin while nothing is marked and nothing chosen: the places, and how far the sound corner goes. */
const SoundMargin = ({ geometry, sheet, asked }: SoundMarginProps) => {
  return (
    <>
      <div className="margin-top">
        <span className="margin-grade">
          <GradeMark grade={null} /> Nothing marked
        </span>
        <span className="label">{cornerWords(geometry.corner)}</span>
      </div>
      <h2 className="heading">Choose what to look at</h2>
      {geometry.stranger === null ? null : <p className="margin-notice">Nothing is computed at {geometry.stranger}.</p>}
      {geometry.position === null ? (
        <>
          <p className="margin-lead">
            The sound corner is drawn. Choose a place of it to see what it does when it is torn, loose or firmer, or
            mark what you find on the Underside.
          </p>
          <CornerPlaces geometry={geometry} />
        </>
      ) : (
        <>
          <p className="margin-lead">
            {fullName(geometry.position)}: nothing is marked here, and the sound corner is drawn. Look at it as one of
            these; the Underside stays as it is.
          </p>
          <ViewOffer geometry={geometry} position={geometry.position} />
        </>
      )}
      {sheet?.rows.map((row) => (
        <RowTable key={row.words} row={row} name="Sound" />
      ))}
      {sheet === null ? null : <MarginSection title="Where it binds">{sheet.rows[0]?.binds}</MarginSection>}
      <p className="margin-lead">
        As soon as a place is looked at, up to four states of it are drawn; Over travel draws those of any places of the
        corner beside each other, and another car line.
      </p>
      {sheet === null || asked === null ? null : (
        <p className="margin-links">
          <PrintButton
            print={() => printAskedSheet({ kind: "travel", question: asked }, byQuery())}
            nameOf={conditionPathWords}
          />
          <CsvLink text={formatTravelCsv(sheet, asked)} name={`${geometry.family.id}-${geometry.corner}-travel`} />
        </p>
      )}
      <PlaceLinks geometry={geometry} />
    </>
  );
};

const cornerWords = (corner: string): string => corner.replace("-", " ");

/** Geometry while nothing is looked at as torn, loose or firmer: the sound corner moves, on three sheets and in space, beside its curves. */
export const SoundCornerPage = ({ geometry }: { readonly geometry: Geometry }) => {
  const { family, corner, condition, chooseCorner } = geometry;
  const { answer, asked, busy, ended, stop } = useTravelSheet(geometry.lines.question);
  const sheet = answer !== null && "sheet" in answer ? answer.sheet : null;
  const [eye, setEye] = geometry.eye;
  const [scale, setScale] = useState<string | null>(null);
  const reset = geometry.resetCondition;
  const keys = useMemo(
    () => [...cornerKeys(chooseCorner), { key: "0", does: "back to ride height and 2 kN of braking", run: reset }],
    [chooseCorner, reset],
  );
  return (
    <ComputedPage
      name={family.name}
      sub={`geometry, ${cornerWords(corner)}`}
      titleBlock={familyTitleBlock(family, { title: `Geometry, ${cornerWords(corner)}`, sheet: "3 of 7", scale })}
      keys={keys}
      fieldKeys={SLIDER_KEYS}
      waiting={busy ? { doing: "Balancing the sound corner at every height", stop } : null}
      margin={
        answer === null ? (
          <NoAnswer ended={ended} doing="The sound corner is balanced at every height." again="Move a slider" />
        ) : "findings" in answer ? (
          <FindingsList findings={answer.findings} nameOf={conditionPathWords} />
        ) : (
          <SoundMargin geometry={geometry} sheet={sheet} asked={asked} />
        )
      }
      choices={{
        label: "Corner and place",
        of: (
          <>
            <Choice
              label="Corner"
              value={corner}
              options={CORNERS.map((one) => ({ value: one, words: cornerWords(one) }))}
              onChoose={(value) => chooseCorner(value as typeof corner)}
            />
            <PlaceChoice geometry={geometry} />
            <ViewChoice geometry={geometry} />
            <LineChoices geometry={geometry} />
          </>
        ),
      }}
      drawing={{
        label: "Views and curves",
        className: "travel-drawing",
        of:
          sheet === null || asked === null ? null : (
            <MovingCorner sheet={sheet} asked={asked} eye={eye} setEye={setEye} onScale={setScale} />
          ),
      }}
      sliders={
        <ConditionSliders
          axle={family[corner.startsWith("front") ? "front" : "rear"]}
          condition={condition}
          onChange={geometry.setCondition}
        />
      }
    />
  );
};
