import { useNavigate } from "@tanstack/react-router";
import { type ReactNode, useEffect, useMemo } from "react";
import { formatNumber, recordedBy, type Stage, type StageMark, stageOrder, stageWords } from "#casework";
import { INVENTED_NOTE } from "#drawing";
import { bringIntoView } from "../../scene/bring-into-view.ts";
import type { PageKey } from "../../shell/page-keys.ts";
import { Sheet } from "../../shell/sheet.tsx";
import type { TitleBlockFacts } from "../../shell/title-block.tsx";
import type { Waiting } from "../../shell/waiting-line.tsx";
import { useAppraisalAhead } from "../appraisal/use-appraisal.ts";
import type { UnsentEntry } from "../unsent/entry.ts";
import { UnsentNotice } from "../unsent/unsent-notice.tsx";
import { type Case, useCase } from "./case-context.tsx";
import { JobLine } from "./job-line.tsx";
import { stageAfter, stagesOfRecord } from "./progress.ts";
import { RecorderNote } from "./recorder-note.tsx";
import { SettledQuestion } from "./settled-question.tsx";

const KM_PER_MILE = 1.609_344;

/** A whole number with a narrow space at its thousands: "128 440". */
export const formatThousands = (value: number): string => formatNumber(value, 0).replace(/\B(?=(\d{3})+$)/g, "\u202f");

/** An odometer in the unit of its car: "128 440 km"; "" where it was not read. */
export const odometerWords = ({ car, visit }: Pick<Case, "car" | "visit">): string => {
  if (visit.odometerKm === null) return "";
  return car.distanceUnit === "km"
    ? `${formatThousands(visit.odometerKm)} km`
    : `${formatThousands(visit.odometerKm / KM_PER_MILE)} mi`;
};

const dateWords = new Intl.DateTimeFormat("en-GB", { dateStyle: "long", timeZone: "UTC" });

/** A day as it is written on paper: "12 March 2026". */
export const formatDay = (day: string): string => dateWords.format(new Date(`${day}T00:00:00Z`));

const subOf = (held: Case): string =>
  [held.car.registration === held.car.name ? "" : held.car.registration, odometerWords(held)]
    .filter((part) => part !== "")
    .join(", ") || "odometer not read yet";

interface TitleOptions {
  readonly title: string;
  readonly stage: Stage;
  readonly scale?: string | null;
}

/** The title block of a sheet of a case. */
const caseTitleBlock = (held: Case, { title, stage, scale = null }: TitleOptions): TitleBlockFacts => ({
  title,
  note: held.car.invented ? INVENTED_NOTE : "what is blank is not on file",
  rows: [
    [
      { label: "Car", value: held.car.name },
      { label: "Registration", value: held.car.registration || "not on file" },
    ],
    [
      { label: "Odometer", value: odometerWords(held) || "not on file" },
      { label: "Date", value: formatDay(held.visit.date) },
      { label: "By", value: recordedBy(held.visit, held.looks, held.who) },
    ],
    [
      { label: "Units", value: "mm, °, N·m" },
      ...(scale === null ? [] : [{ label: "Scale", value: scale }]),
      { label: "Sheet", value: `${stageOrder.indexOf(stage) + 1} of ${stageOrder.length}` },
    ],
  ],
});

interface CaseSheetProps {
  readonly stage: Stage;
  /** Of the title block; absent: the stage's word. */
  readonly title?: string;
  readonly margin: ReactNode;
  /** What the margin is about; null where it may stay low on an upright tablet. */
  readonly subject?: string | null;
  readonly marginLow?: number;
  readonly scale?: string | null;
  readonly waiting?: Waiting | null;
  readonly keys?: readonly PageKey[];
  /** Marks of the job line as an appraisal gives them; absent: from the records alone. */
  readonly marks?: readonly StageMark[];
  /** Entries the page shows itself where they were typed. */
  readonly shownOnPage?: (entry: UnsentEntry) => boolean;
  readonly children: ReactNode;
}

const NO_KEYS: readonly PageKey[] = [];

/** Keys that go along the job line, on every page of a case. */
const useStageKeys = (visitId: string, stage: Stage): readonly PageKey[] => {
  const navigate = useNavigate();
  return useMemo(() => {
    const go = (to: Stage | null, key: string, does: string): readonly PageKey[] =>
      to === null
        ? []
        : [{ key, does, run: () => void navigate({ to: `/cases/$visit/${to}`, params: { visit: visitId } }) }];
    const before = stageOrder[stageOrder.indexOf(stage) - 1] ?? null;
    const after = stageAfter(stage);
    return [
      ...go(before, "p", before === null ? "" : `back to ${stageWords[before]}`),
      ...go(after, "n", after === null ? "" : `on to ${stageWords[after]}`),
    ];
  }, [navigate, visitId, stage]);
};

/** Keeps what was tapped in view while the margin slides up over the lower half of an upright tablet. */
const useTappedInView = (subject: string | null): void => {
  useEffect(() => {
    const drawing = document.querySelector<HTMLElement>("#drawing");
    const tapped = document.activeElement;
    if (subject === null || drawing === null || tapped === null || !drawing.contains(tapped)) return;
    // The margin has its height only a frame or two later: what is left for the drawing then changes.
    const room = new ResizeObserver(() => {
      if (tapped.isConnected) bringIntoView(tapped, drawing);
    });
    room.observe(drawing);
    return () => room.disconnect();
  }, [subject]);
};

/** A sheet of a case: job line on top, what has not reached the store, drawing or table, margin, title block. */
export const CaseSheet = ({
  stage,
  title,
  margin,
  scale,
  marks,
  keys = NO_KEYS,
  shownOnPage,
  children,
  ...rest
}: CaseSheetProps) => {
  const held = useCase();
  useTappedInView(rest.subject ?? null);
  useAppraisalAhead(stageOrder.indexOf(stage) < stageOrder.indexOf("findings"));
  const stageKeys = useStageKeys(held.visitId, stage);
  const all = useMemo(() => [...keys, ...stageKeys], [keys, stageKeys]);
  return (
    <Sheet
      name={held.car.name}
      sub={subOf(held)}
      place="Today"
      line={<JobLine visitId={held.visitId} marks={marks ?? stagesOfRecord(held)} now={stage} />}
      notice={
        <UnsentNotice {...(shownOnPage === undefined ? {} : { shownOnPage })}>
          {stage === "readings" ? null : <SettledQuestion />}
        </UnsentNotice>
      }
      keys={all}
      titleBlock={caseTitleBlock(held, { title: title ?? stageWords[stage], stage, scale: scale ?? null })}
      margin={
        <>
          {margin}
          <RecorderNote />
        </>
      }
      {...rest}
    >
      {children}
    </Sheet>
  );
};
