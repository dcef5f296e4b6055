import { Link, useNavigate, useSearch } from "@tanstack/react-router";
import { useCallback, useMemo, useState } from "react";
import type { Appraisal } from "#casework";
import { findReadingPlace, isWorthSaying, notOnFileWords, symptoms } from "#casework";
import { drawUnderside, type TypeScale } from "#drawing";
import type { Family } from "../../car.ts";
import { FittedScene, type SceneRoom } from "../../scene/fitted-scene.tsx";
import { type AppraisedCase, useAppraisal } from "../appraisal/use-appraisal.ts";
import { WaitingPage } from "../appraisal/waiting-page.tsx";
import { CaseSheet } from "../case/case-sheet.tsx";
import { StageDone } from "../case/stage-done.tsx";
import { statesOfFindings } from "../case/states-of-looks.ts";
import { FindingMargin } from "./finding-margin.tsx";
import { FoundCurve } from "./found-curve.tsx";
import { FoundRows } from "./found-rows.tsx";
import { NextLooks } from "./next-looks.tsx";
import { SuspectMargin } from "./suspect-margin.tsx";
import { SuspectRows } from "./suspect-rows.tsx";

/** Room a label of several lines takes in its column, px; larger under a thumb. */
const LABEL_ROOM = { desk: 104, touch: 130 } as const;

/** The car with both axles, in the room between its labels: as high as the fuller column of them needs. */
const leastHeightFor =
  (labels: number) =>
  (width: number, type: TypeScale): number =>
    Math.max(440, 0.68 * width, labels * LABEL_ROOM[type]);

/** How many labels the fuller of the two columns holds. */
const mostLabels = (findings: Appraisal["findings"]): number => {
  const drawn = findings.filter((finding) => isWorthSaying(finding) && findReadingPlace(finding.place) === null);
  const on = (side: "left" | "right"): number => drawn.filter((finding) => finding.side === side).length;
  return Math.max(on("left"), on("right"));
};

/** The complaint in the words of the table, as the head of the suspects. */
const complaintWords = ({ held }: AppraisedCase): string =>
  (held.enquiry?.symptoms ?? [])
    .flatMap(({ symptom }) => symptoms.find(({ id }) => id === symptom)?.label ?? [])
    .join("; ");

const useSelection = () => {
  const { at, suspect, all } = useSearch({ from: "/cases/$visit/findings" });
  const navigate = useNavigate({ from: "/cases/$visit/findings" });
  const select = useCallback(
    (search: { readonly at?: string; readonly suspect?: string }) =>
      void navigate({ search: ({ all: kept }) => ({ ...search, ...(kept && { all: kept }) }), replace: true }),
    [navigate],
  );
  const showAll = useCallback(
    (isAll: boolean) =>
      void navigate({ search: ({ all: _, ...rest }) => (isAll ? { ...rest, all: true } : rest), replace: true }),
    [navigate],
  );
  return { at: at ?? null, suspect: suspect ?? null, isAll: all === true, select, showAll };
};

const CarDrawing = ({
  family,
  appraisal,
  selected,
  onSelect,
  onScale,
}: {
  readonly family: Family;
  readonly appraisal: Appraisal;
  readonly selected: string | null;
  readonly onSelect: (place: string) => void;
  readonly onScale: (scale: string | null) => void;
}) => {
  const states = useMemo(() => statesOfFindings(appraisal.findings, isWorthSaying), [appraisal]);
  const draw = useCallback(
    (room: SceneRoom) => drawUnderside(family, { ...room, states, selected, legend: false }),
    [family, states, selected],
  );
  const leastHeight = useMemo(() => leastHeightFor(mostLabels(appraisal.findings)), [appraisal]);
  const places = useMemo(() => new Set(appraisal.findings.map((f) => f.place)), [appraisal]);
  return (
    <FittedScene
      draw={draw}
      leastHeight={leastHeight}
      onScale={onScale}
      onPress={(id) => {
        if (places.has(id)) onSelect(id);
      }}
    />
  );
};

const NothingSelected = ({ appraisal }: { readonly appraisal: Appraisal }) => (
  <>
    <h2 className="heading">
      {appraisal.findings.some(isWorthSaying) ? "Choose a finding or a suspect" : "Nothing found so far"}
    </h2>
    <p className="margin-lead">
      {appraisal.findings.some(isWorthSaying)
        ? "Each opens to what it was held against and whose, how sure it is, and what it does to the car."
        : "What is looked at and read appears here by itself, in order of grade."}
    </p>
  </>
);

const MarginOf = ({ of, appraisal, family }: { of: AppraisedCase; appraisal: Appraisal; family: Family }) => {
  const { at, suspect } = useSelection();
  const finding = appraisal.findings.find(({ place }) => place === at);
  const cause = appraisal.suspects.suspects.find((s) => s.cause === suspect);
  const { visitId } = of.held;
  if (cause !== undefined)
    return <SuspectMargin visitId={visitId} family={family} suspect={cause} appraisal={appraisal} />;
  if (finding === undefined) return <NothingSelected appraisal={appraisal} />;
  const remedy = appraisal.remedies.find((r) => r.findings.some((f) => f.place === finding.place)) ?? null;
  return <FindingMargin visitId={visitId} family={family} finding={finding} remedy={remedy} />;
};

const FindingsSheet = ({ of, appraisal, family }: { of: AppraisedCase; appraisal: Appraisal; family: Family }) => {
  const { at, suspect, isAll, select, showAll } = useSelection();
  const [scale, setScale] = useState<string | null>(null);
  const worth = appraisal.findings.filter(isWorthSaying);
  const seen = appraisal.findings.length - appraisal.notLookedAt;
  const notOnFile = notOnFileWords(appraisal.findings);
  const selectPlace = useCallback((place: string) => select({ at: place }), [select]);
  const complaint = complaintWords(of);
  return (
    <CaseSheet
      stage="findings"
      waiting={of.waiting}
      marks={appraisal.stages}
      scale={scale}
      subject={suspect ?? at}
      margin={
        <>
          <MarginOf of={of} appraisal={appraisal} family={family} />
          <StageDone stage="findings" />
        </>
      }
    >
      <div className="found-page">
        <div className="found-car">
          <CarDrawing family={family} appraisal={appraisal} selected={at} onSelect={selectPlace} onScale={setScale} />
          <FoundCurve finding={appraisal.findings.find(({ place }) => place === at)} />
          <NextLooks suspects={appraisal.suspects} />
        </div>
        <div className="found-lists">
          <section>
            <h2>What was found</h2>
            <FoundRows family={family} findings={worth} selected={at} onSelect={selectPlace} />
            <p className="label found-rest">
              {seen - worth.length} places looked at or read and sound; {appraisal.notLookedAt} not looked at.{" "}
              {notOnFile}{" "}
              <Link to="/cases/$visit/underside" params={{ visit: of.held.visitId }}>
                Add what you saw
              </Link>
            </p>
          </section>
          <section>
            <h2>{complaint === "" ? "Suspects" : complaint}</h2>
            {appraisal.suspects.note === null ? (
              <SuspectRows
                family={family}
                suspects={appraisal.suspects}
                selected={suspect}
                onSelect={(cause) => select({ suspect: cause })}
                isAll={isAll}
                onAll={showAll}
              />
            ) : (
              <p className="label found-rest">{appraisal.suspects.note}</p>
            )}
          </section>
        </div>
      </div>
    </CaseSheet>
  );
};

/** Findings: what was found on its place, by grade; what is suspected behind the complaint; the next best look. */
export const FindingsPage = () => {
  const of = useAppraisal();
  const family = of.held.family?.family ?? null;
  if (of.appraisal === null || family === null) return <WaitingPage stage="findings" of={of} />;
  return <FindingsSheet of={of} appraisal={of.appraisal} family={family} />;
};
