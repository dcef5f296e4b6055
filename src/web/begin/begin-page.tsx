import { getRouteApi, Link } from "@tanstack/react-router";
import { useMemo, useRef, useState } from "react";
import { type SilhouetteSheet, silhouetteOfFamily } from "#contract";
import { FindingsList } from "../shell/findings-list.tsx";
import { Sheet } from "../shell/sheet.tsx";
import { forgetForm, keepForm, loadKeptForm } from "./kept-form.ts";
import { NotCorrectablePage } from "./not-correctable-page.tsx";
import { Preview } from "./preview.tsx";
import { SilhouetteFields } from "./silhouette-fields.tsx";
import {
  blankForm,
  type FormContext,
  familyAsFarAsRead,
  formOfSheet,
  keptName,
  readForm,
  type SilhouetteForm,
} from "./silhouette-form.ts";
import { useMaking } from "./use-making.ts";

const route = getRouteApi("/families/begin");
const NOTHING_WRONG = {};
const ROWS = [
  [
    { label: "Rung", value: "scaled" },
    { label: "Units", value: "mm, kg, %" },
    { label: "Sheet", value: "1 of 1" },
  ],
];

/**
 * What the form comes to, and a family to draw while something in it is wrong: with what stood there before, or, where it
 * came back wrong, with what is usual.
 */
const useReadForm = (form: SilhouetteForm, begins: SilhouetteForm, context: FormContext) => {
  const read = useMemo(() => readForm(form, context), [form, context]);
  const [last, setLast] = useState(begins);
  if ("family" in read && form !== last) setLast(form);
  const family = useMemo(() => familyAsFarAsRead(form, last, context), [form, last, context]);
  return { read, family };
};

/** The entries as they stand: those typed here and not used yet, else those it begins from. */
const useKeptForm = (subject: string, begins: SilhouetteForm) => {
  const [form, setForm] = useState(() => loadKeptForm(subject, begins) ?? begins);
  return {
    form,
    touched: JSON.stringify(form) !== JSON.stringify(begins),
    change: (next: SilhouetteForm) => {
      setForm(next);
      keepForm(subject, next);
    },
    startOver: () => {
      setForm(begins);
      forgetForm(subject);
    },
  };
};

const SAID = {
  silent: "No answer came; nothing was kept. See that the program is still running.",
  superseded: "Somebody has saved this car line since it was opened; nothing was kept. Load the page again.",
} as const;

const BandWords = () => (
  <p className="margin-lead">
    The template of each layout is scaled to these measures; what is left blank is assumed, and every page and paper
    says so. Hard points then stand to ±40 mm along and across and ±24 mm in height, rubber to ±80 %: twice the standard
    deviation, 95 %, as every ± here. The band of every figure comes from that.
  </p>
);

interface FormSheetProps {
  /** The entries of the car line that is corrected; null: a new one is begun. */
  readonly entries: SilhouetteSheet | null;
}

const FormSheet = ({ entries }: FormSheetProps) => {
  const { ranges, lines, corrected } = route.useLoaderData();
  const { visit } = route.useSearch();
  const subject = corrected === null ? (visit ?? "new") : `${corrected.family.id} ${corrected.version}`;
  const begins = useMemo(() => (entries === null ? blankForm() : formOfSheet(entries)), [entries]);
  const { form, touched, change, startOver } = useKeptForm(subject, begins);
  const context = useMemo(
    () => ({
      ranges,
      taken: lines.filter(({ id }) => id !== corrected?.family.id).map(({ name }) => name),
      rung: entries?.rung,
    }),
    [ranges, lines, corrected, entries],
  );
  const { read, family } = useReadForm(form, begins, context);
  const { making, make } = useMaking({ corrected, visit, onKept: () => forgetForm(subject) });
  const wrong = "wrong" in read ? read.wrong : NOTHING_WRONG;
  const count = Object.keys(wrong).length;
  const fields = useRef<HTMLFormElement>(null);
  const keep = () => {
    if ("sheet" in read) void make(read.sheet);
    else fields.current?.querySelector<HTMLElement>("[aria-invalid='true']")?.focus();
  };
  const title = corrected === null ? "Begin a car line" : "Correct a car line";
  return (
    <Sheet
      name={corrected === null ? title : corrected.family.name}
      sub={corrected === null ? "from the silhouettes of its axles" : "its entries corrected"}
      place="Families"
      waiting={making.kind === "busy" ? { doing: "Keeping the car line" } : null}
      titleBlock={{
        title,
        note: corrected === null ? "nothing kept yet" : "kept as it was until you say so",
        rows: ROWS,
      }}
      margin={
        <>
          <h2 className="heading">{corrected === null ? "A car nobody has measured" : "Put its entries right"}</h2>
          {corrected === null ? null : (
            <p className="margin-lead">
              Every car of this line is drawn and computed by the corrected measures from then on; what was recorded of
              them stays.
            </p>
          )}
          <BandWords />
          <p className="margin-links">
            <button type="button" className="press" disabled={making.kind === "busy"} onClick={keep}>
              {corrected === null ? "Make this car line" : "Keep the correction"}
            </button>
            {touched ? (
              <button type="button" className="link" onClick={startOver}>
                {corrected === null ? "Start over" : "As it was"}
              </button>
            ) : null}
            {visit === undefined ? null : (
              <Link to="/cases/$visit/car" params={{ visit }}>
                Back to the car without it
              </Link>
            )}
            {corrected === null ? null : (
              <Link to="/families/$familyId" params={{ familyId: corrected.family.id }}>
                Leave it as it is
              </Link>
            )}
          </p>
          <div role="status">
            {count === 0 ? null : (
              <p className="margin-notice">
                {count === 1 ? "One entry has" : `${count} entries have`} to be put right first; the drawing takes for{" "}
                {count === 1 ? "it" : "them"} what stood there before, or what is usual.
              </p>
            )}
            {making.kind === "silent" || making.kind === "superseded" ? (
              <p className="margin-notice">{SAID[making.kind]}</p>
            ) : null}
          </div>
          {making.kind === "refused" ? <FindingsList findings={making.findings} /> : null}
        </>
      }
    >
      <div className="begin">
        <form ref={fields} className="begin-form" onSubmit={(event) => event.preventDefault()}>
          <SilhouetteFields
            ranges={ranges}
            form={form}
            wrong={wrong}
            keptName={keptName(form.name, context.taken)}
            onChange={change}
          />
        </form>
        <div className="begin-preview">{family === null ? null : <Preview family={family} />}</div>
      </div>
    </Sheet>
  );
};

/** Begins a car line nobody has measured from the silhouettes of its axles and what a tape finds, or corrects one begun so. */
export const BeginPage = () => {
  const { corrected } = route.useLoaderData();
  const entries = useMemo(() => (corrected === null ? null : silhouetteOfFamily(corrected.family)), [corrected]);
  if (corrected !== null && entries === null) return <NotCorrectablePage family={corrected.family} />;
  return <FormSheet key={corrected?.family.id ?? "new"} entries={entries} />;
};
