import { getRouteApi, useNavigate } from "@tanstack/react-router";
import { useCallback, useEffect, useState } from "react";
import { assumedMark, drawUnderside } from "#drawing";
import type { Family } from "../../car.ts";
import { LAYOUT_WORDS } from "../../families/layout-words.ts";
import { FittedScene, type SceneRoom } from "../../scene/fitted-scene.tsx";
import { MarginSection } from "../../shell/margin-section.tsx";
import { type Case, useCase } from "../case/case-context.tsx";
import { CaseSheet } from "../case/case-sheet.tsx";
import { StageDone } from "../case/stage-done.tsx";
import { UNNAMED_CAR } from "../case/unnamed-car.ts";
import { KeptField } from "../fields/kept-field.tsx";
import { FamilyChoice } from "./family-choice.tsx";
import { geometryWords } from "./geometry-words.ts";
import { isOdometerRefusal, OdometerField } from "./odometer-field.tsx";
import { VariantChoices } from "./variant-choices.tsx";

const route = getRouteApi("/cases/$visit/car");

const IDENTITY_LENGTH = 17;
const leastHeight = () => 420;

const FamilyDrawing = ({ family }: { readonly family: Family }) => {
  const draw = useCallback((room: SceneRoom) => drawUnderside(family, { ...room, states: null }), [family]);
  return (
    <div className="car-drawing">
      <FittedScene draw={draw} leastHeight={leastHeight} />
    </div>
  );
};

/** Takes up a car line that was begun for this car elsewhere, and clears it from the address. */
const useBegunFamily = ({ car, visitId, change }: Case) => {
  const { family } = route.useSearch();
  const navigate = useNavigate();
  useEffect(() => {
    if (family === undefined) return;
    if (family !== car.family) change("car", (body) => ({ ...(body ?? car), family, variants: [] }));
    void navigate({ to: "/cases/$visit/car", params: { visit: visitId }, search: {}, replace: true });
  }, [family, car, visitId, change, navigate]);
};

const parseYear = (text: string): number | null | undefined => {
  const trimmed = text.trim();
  if (trimmed === "") return null;
  const year = Number(trimmed);
  return /^\d{4}$/.test(trimmed) && year >= 1900 && year <= 2200 ? year : undefined;
};

/** Who the car is: plate, name, year, identity number, owner, odometer. */
const Identity = () => {
  const { car, visit, change } = useCase();
  const [wrongYear, setWrongYear] = useState(false);
  const set = (part: Partial<Case["car"]>) => change("car", (body) => ({ ...(body ?? car), ...part }));
  const identity = car.identityNumber ?? "";
  return (
    <div className="car-fields">
      <KeptField
        label="Registration"
        className="field-short"
        value={car.registration}
        onKeep={(text) => set({ registration: text.trim().toUpperCase() })}
      />
      <OdometerField />
      <KeptField
        label="Stands in"
        className="field-short"
        value={visit.bay ?? ""}
        note="number of the bay, or yard"
        onKeep={(text) =>
          change("visit", (body) => ({ ...(body ?? visit), bay: text.trim() === "" ? null : text.trim() }))
        }
      />
      <KeptField
        label="What people call it"
        className="field-wide"
        value={car.name === UNNAMED_CAR ? "" : car.name}
        {...(car.name === UNNAMED_CAR ? { note: "as people call it: maker's name, body, year" } : {})}
        onKeep={(text) => set({ name: text.trim() === "" ? UNNAMED_CAR : text.trim() })}
      />
      <KeptField
        label="Year"
        numeric
        value={car.year === null ? "" : String(car.year)}
        wrong={wrongYear}
        {...(wrongYear ? { note: "four digits, from 1900 on" } : {})}
        onKeep={(text) => {
          const year = parseYear(text);
          setWrongYear(year === undefined);
          if (year !== undefined) set({ year });
        }}
      />
      <KeptField
        label="Identity number"
        className="field-wide"
        value={identity}
        note={
          identity === "" || identity.length === IDENTITY_LENGTH
            ? `as stamped on the car, ${IDENTITY_LENGTH} characters`
            : `${identity.length} characters; cars since 1981 carry ${IDENTITY_LENGTH}, older ones fewer`
        }
        onKeep={(text) => set({ identityNumber: text.trim() === "" ? null : text.replace(/\s/g, "").toUpperCase() })}
      />
      <KeptField
        label="Owner"
        className="field-wide"
        value={car.owner ?? ""}
        onKeep={(text) => set({ owner: text.trim() === "" ? null : text.trim() })}
      />
    </div>
  );
};

const FamilyMargin = ({ family }: { readonly family: Family }) => (
  <>
    <h2 className="heading">{family.name}</h2>
    <StageDone stage="car" />
    <MarginSection title="Axles">
      {LAYOUT_WORDS[family.front.layout]} front{assumedMark(family, "front-layout")}, {LAYOUT_WORDS[family.rear.layout]}{" "}
      rear{assumedMark(family, "rear-layout")}
    </MarginSection>
    <MarginSection title="How well its geometry is known">{geometryWords(family)}</MarginSection>
  </>
);

const NoFamilyMargin = () => (
  <>
    <h2 className="heading">Which car line is it?</h2>
    <p className="margin-notice">The car is done once its car line is chosen: Readings needs it.</p>
    <p className="margin-lead">
      The drawing, the list of places and what a fault does come from the car line. Everything else on this page may
      stay blank.
    </p>
  </>
);

/** Car: which one it is, how far it has run, and which car line it belongs to. */
export const CarPage = () => {
  const held = useCase();
  useBegunFamily(held);
  const { family, familyComing, car } = held;
  const [choosing, setChoosing] = useState(false);
  const open = choosing || car.family === null;
  return (
    <CaseSheet
      stage="car"
      subject={null}
      marginLow={132}
      shownOnPage={isOdometerRefusal}
      waiting={familyComing ? { doing: "Reading the car line" } : null}
      margin={family === null ? <NoFamilyMargin /> : <FamilyMargin family={family.family} />}
    >
      <div className="case-page car-page">
        <section>
          <h2>This car</h2>
          <Identity />
        </section>
        <section className="car-family">
          <div className="today-work-head">
            <h2>{family === null ? "Its car line" : family.family.name}</h2>
            {family === null ? null : (
              <button type="button" className="link" onClick={() => setChoosing(!choosing)}>
                {choosing ? "Leave it as it is" : "Another car line"}
              </button>
            )}
          </div>
          {open ? <FamilyChoice onChosen={() => setChoosing(false)} /> : null}
          {!open && family === null && !familyComing ? (
            <p className="margin-notice">Its car line, {car.family}, cannot be read. Choose it again.</p>
          ) : null}
          {open || family === null ? null : (
            <>
              <FamilyDrawing family={family.family} />
              <VariantChoices />
            </>
          )}
        </section>
      </div>
    </CaseSheet>
  );
};
