import { getRouteApi, Link, useNavigate } from "@tanstack/react-router";
import { useCallback, useMemo } from "react";
import {
  alongForm,
  type CarQuestion,
  carMotionForm,
  carMotions,
  type Figure,
  formatNumber,
  type RubberFault,
  type WholeCar,
} from "#casework";
import { drawTravelPlots } from "#drawing";
import { type Family, type Position, positionsOf } from "../car.ts";
import { byQuery } from "../cases/case/recorder.ts";
import { Choice } from "../choices/choice.tsx";
import { FigureLine } from "../effect/figure-line.tsx";
import { rungWords } from "../effect/rung-words.ts";
import { ComputedPage } from "../geometry/computed-page.tsx";
import { NoAnswer } from "../geometry/no-answer.tsx";
import { NoSlider, Slider } from "../geometry/slider.tsx";
import { SLIDER_KEYS } from "../geometry/slider-keys.ts";
import { useDragged } from "../geometry/use-dragged.ts";
import { PrintButton } from "../printing/print-button.tsx";
import { FittedScene, type SceneRoom } from "../scene/fitted-scene.tsx";
import { printAskedSheet } from "../server/print-asked-sheet.ts";
import { FindingsList } from "../shell/findings-list.tsx";
import { MarginSection } from "../shell/margin-section.tsx";
import { familyTitleBlock } from "../underside/family-title-block.ts";
import { isComputed, possibleFaultsAt } from "../underside/rubber-at.ts";
import { changeOf, heldWords } from "./car-search.ts";
import { ChangedJoint, changesAt, HowMuch } from "./changed-joint.tsx";
import { CornerTable } from "./corner-table.tsx";
import { useCar } from "./use-car.ts";
import "./whole-car.css";

const familyRoute = getRouteApi("/families/$familyId");
const carRoute = getRouteApi("/families/$familyId/car");
const leastHeight = () => 320;
/** Where a motion begins to be looked at, as shown. */
const FIRST = { roll: 2, heave: -30, pitch: 1, rack: 40, bend: 0.5 } as const;
const FIRST_ALONG = 0;

const Curves = ({ car }: { readonly car: WholeCar }) => {
  const draw = useCallback(
    (room: SceneRoom) =>
      drawTravelPlots(
        { plots: car.plots, rows: [], poses: [], sentences: [car.sentence] },
        { ...room, at: car.motion.by, upright: { title: car.axis, show: carMotionForm(car.motion.kind).show } },
      ),
    [car],
  );
  return <FittedScene draw={draw} leastHeight={leastHeight} />;
};

/** Whether a figure stands in the table of the four wheels. */
const isInTable = ({ corners }: WholeCar, figure: Figure): boolean =>
  corners.some(({ cells }) => Object.values(cells).includes(figure));

interface CarMarginProps {
  readonly question: CarQuestion;
  readonly car: WholeCar;
}

/** What the wheels do, in words and figures, and how sure that is. */
const CarMargin = ({ question, car }: CarMarginProps) => (
  <>
    {car.figures.every((figure) => isInTable(car, figure)) ? null : (
      <h3 className="margin-title">Figures of the car; each opens</h3>
    )}
    {car.figures
      .filter((figure) => !isInTable(car, figure))
      .map((figure) => (
        <FigureLine key={figure.key} figure={figure} effect={car} />
      ))}
    <h3 className="margin-title">Figures of each wheel; each opens</h3>
    {car.figures
      .filter((figure) => isInTable(car, figure))
      .map((figure) => (
        <FigureLine key={figure.key} figure={figure} effect={car} />
      ))}
    <MarginSection title="How sure">
      {car.howSure} Geometry {rungWords(car.rung, car.invented)}.
    </MarginSection>
    <MarginSection title="Computed so">{car.computedSo}</MarginSection>
    <p className="margin-links">
      <PrintButton print={() => printAskedSheet({ kind: "car", question }, byQuery())} />
      <Link to="/families/$familyId/travel" params={{ familyId: question.family.id }}>
        Over travel
      </Link>
      <Link to="/families/$familyId" params={{ familyId: question.family.id }}>
        Family sheet
      </Link>
    </p>
  </>
);

/** What a joint is looked at as first: torn where it can be, the worst. */
const firstChange = (family: Family, position: Position): RubberFault | null => {
  const faults = changesAt(family, position, null).map(({ fault }) => fault);
  const found = faults.findLast(({ kind }) => kind === "torn") ?? faults[0];
  return found !== undefined && found.kind !== "fluid-gone" ? found : null;
};

/** The whole car on level ground: leaning, sinking, nodding, steered. */
export const WholeCarPage = () => {
  const { family } = familyRoute.useLoaderData();
  const search = carRoute.useSearch();
  const navigate = useNavigate({ from: "/families/$familyId/car" });
  const kind = search.motion ?? "roll";
  const form = carMotionForm(kind);
  const most = form.most(family);
  const addressed = Math.max(-most, Math.min(most, search.by ?? FIRST[kind]));
  const addressedAlong = Math.max(-alongForm.brake, Math.min(alongForm.drive, search.along ?? FIRST_ALONG));
  const sliderName = kind === "bend" ? "sideways" : form.name;
  const held = heldWords([
    { name: sliderName, unit: form.unit, asked: search.by, shown: addressed },
    ...(kind === "bend" ? [{ name: "along the car", unit: "g", asked: search.along, shown: addressedAlong }] : []),
  ]);
  const write = useCallback(
    (by: number) => void navigate({ search: (last) => ({ ...last, by }), replace: true }),
    [navigate],
  );
  const [by, setBy] = useDragged(addressed, write);
  const writeAlong = useCallback(
    (along: number) => void navigate({ search: (last) => ({ ...last, along }), replace: true }),
    [navigate],
  );
  const [along, setAlong] = useDragged(addressedAlong, writeAlong);
  const places = useMemo(
    () => positionsOf(family).filter((p) => p.side !== null && isComputed(possibleFaultsAt(family, p))),
    [family],
  );
  const position = (kind === "bend" && places.find(({ id }) => id === search.at)) || null;
  const fault = useMemo(
    () => (position === null ? null : (changeOf(search.as) ?? firstChange(family, position))),
    [family, position, search.as],
  );
  const question = useMemo((): CarQuestion => {
    const amount = carMotionForm(kind).read(by);
    if (kind !== "bend") return { family, motion: { kind, by: amount } };
    return {
      family,
      motion: { kind, by: amount, along: alongForm.read(along) },
      ...(position === null || fault === null ? {} : { changed: { position: position.id, fault } }),
    };
  }, [family, kind, by, along, position, fault]);
  const { answer, busy, ended, stop } = useCar(question);
  const car = answer !== null && "car" in answer && answer.car.motion.kind === kind ? answer.car : null;
  const said = `${formatNumber(by, form.unit === "mm" ? 0 : 2)}${form.unit === "°" ? "°" : ` ${form.unit}`}`;
  const move = useCallback((motion: typeof kind) => void navigate({ search: { motion } }), [navigate]);
  const still = useCallback(() => setBy(0), [setBy]);
  const place = useCallback(
    (id: string | null) =>
      void navigate({ search: ({ at: _, as: __, ...last }) => ({ ...last, ...(id === null ? {} : { at: id }) }) }),
    [navigate],
  );
  const lookAs = useCallback((as: string) => void navigate({ search: (last) => ({ ...last, as }) }), [navigate]);
  const keys = useMemo(
    () => [
      ...carMotions.map(({ kind: motion, name }, i) => ({
        key: String(i + 1),
        does: name.toLowerCase(),
        run: () => move(motion),
      })),
      { key: "0", does: "back to standing straight", run: still },
    ],
    [move, still],
  );
  return (
    <ComputedPage
      name={family.name}
      sub="the whole car"
      titleBlock={familyTitleBlock(family, { title: "The whole car", sheet: "6 of 7", scale: null })}
      keys={keys}
      fieldKeys={SLIDER_KEYS}
      waiting={busy ? { doing: "Putting four wheels on the ground", stop } : null}
      margin={
        <>
          <h2 className="heading">What the wheels do</h2>
          {held === null ? null : <p className="margin-notice">{held}</p>}
          {search.at !== undefined && kind === "bend" && position === null ? (
            <p className="margin-notice">
              “{search.at}” is no joint of this car line that can be computed, so all are sound.
            </p>
          ) : null}
          {position === null || fault === null ? null : (
            <HowMuch family={family} position={position} fault={fault} onAs={lookAs} />
          )}
          {car !== null ? (
            <CarMargin question={question} car={car} />
          ) : answer !== null && "findings" in answer ? (
            <FindingsList findings={answer.findings} nameOf={() => form.name} />
          ) : (
            <NoAnswer ended={ended} doing="Every wheel is put on the ground." again="Move the car" />
          )}
        </>
      }
      choices={{
        label: "Motion",
        of: (
          <>
            <Choice
              label="Moved"
              value={kind}
              options={carMotions.map((one) => ({ value: one.kind, words: one.name }))}
              onChoose={(motion) => move(motion as typeof kind)}
            />
            {kind === "bend" ? (
              <ChangedJoint
                family={family}
                places={places}
                position={position}
                fault={fault}
                onPlace={place}
                onAs={lookAs}
              />
            ) : null}
          </>
        ),
      }}
      drawing={{
        label: "Curves of the wheels",
        className: "whole-car-drawing",
        of:
          car === null ? null : (
            <>
              <p className="whole-car-sentence">{car.sentence}</p>
              <Curves car={car} />
              <CornerTable rows={car.corners} />
            </>
          ),
      }}
      sliders={
        most === 0 ? (
          <NoSlider label={form.name} why="this car line is not steered by a rack" />
        ) : (
          <>
            <Slider
              label={sliderName}
              value={by}
              low={-most}
              high={most}
              step={form.step}
              said={`${said}${by === 0 ? "" : `, ${by > 0 ? form.high : form.low}`}`}
              lowSaid={form.low}
              highSaid={form.high}
              onChange={setBy}
            />
            {kind === "bend" ? (
              <Slider
                label="along the car"
                value={along}
                low={-alongForm.brake}
                high={alongForm.drive}
                step={alongForm.step}
                said={
                  along === 0 ? "none" : `${formatNumber(Math.abs(along), 2)} g, ${along < 0 ? "braking" : "driving"}`
                }
                lowSaid="braking"
                highSaid="driving"
                onChange={setAlong}
              />
            ) : null}
          </>
        )
      }
    />
  );
};
