import { getRouteApi, Link, useNavigate } from "@tanstack/react-router";
import { useMemo, useState } from "react";
import type { Finding } from "#contract";
import type { Family } from "../car.ts";
import { beginFamily } from "../server/silhouettes.ts";
import { FindingsList } from "../shell/findings-list.tsx";
import { Sheet } from "../shell/sheet.tsx";
import { Preview } from "./preview.tsx";
import { SilhouetteFields } from "./silhouette-fields.tsx";
import { readForm, usualForm } from "./silhouette-form.ts";

type Making =
  | { readonly kind: "none" | "busy" | "silent" }
  | { readonly kind: "refused"; readonly findings: readonly Finding[] };

const route = getRouteApi("/families/begin");
const NOTHING_WRONG = {};
const RUNG_TITLE = {
  title: "Begin a car line",
  note: "nothing kept yet",
  rows: [
    [
      { label: "Rung", value: "scaled" },
      { label: "Units", value: "mm, kg, %" },
      { label: "Sheet", value: "1 of 1" },
    ],
  ],
};

/** What the form comes to, and the family last readable, so that the drawing stands while a figure is half typed. */
const useReadForm = (form: ReturnType<typeof usualForm>) => {
  const read = useMemo(() => readForm(form), [form]);
  const [last, setLast] = useState<Family | null>(null);
  if ("family" in read && read.family !== last) setLast(read.family);
  return { read, family: "family" in read ? read.family : last };
};

/** Begins a car line nobody has measured from the silhouettes of its axles and what a tape finds. */
export const BeginPage = () => {
  const [form, setForm] = useState(usualForm);
  const [making, setMaking] = useState<Making>({ kind: "none" });
  const ranges = route.useLoaderData();
  const { visit } = route.useSearch();
  const { read, family } = useReadForm(form);
  const navigate = useNavigate();
  const wrong = "wrong" in read ? read.wrong : NOTHING_WRONG;
  const count = Object.keys(wrong).length;
  const make = async () => {
    if (!("sheet" in read)) return;
    setMaking({ kind: "busy" });
    const begun = await beginFamily(read.sheet);
    if (begun.kind !== "answer") setMaking(begun);
    else if (visit === undefined)
      await navigate({ to: "/families/$familyId/underside", params: { familyId: begun.body } });
    else await navigate({ to: "/cases/$visit/car", params: { visit }, search: { family: begun.body } });
  };
  return (
    <Sheet
      name="Begin a car line"
      sub="from the silhouettes of its axles"
      place="Families"
      waiting={making.kind === "busy" ? { doing: "Keeping the new car line" } : null}
      titleBlock={RUNG_TITLE}
      margin={
        <>
          <h2 className="heading">A car nobody has measured</h2>
          <p className="margin-lead">
            The template of each layout is scaled to these measures. Hard points then stand to 20 mm along and across
            and 12 mm in height, rubber to 40 %: the band of every figure comes from that.
          </p>
          <p className="margin-links">
            <button type="button" className="press" disabled={making.kind === "busy"} onClick={() => void make()}>
              Make this car line
            </button>
            {visit === undefined ? null : (
              <Link to="/cases/$visit/car" params={{ visit }}>
                Back to the car without it
              </Link>
            )}
          </p>
          <div role="status">
            {count === 0 ? null : (
              <p className="margin-notice">
                {count === 1 ? "One entry has" : `${count} entries have`} to be put right first; the drawing shows the
                last that were.
              </p>
            )}
            {making.kind === "silent" ? (
              <p className="margin-notice">No answer came; nothing was kept. See that the program is still running.</p>
            ) : null}
          </div>
          {making.kind === "refused" ? <FindingsList findings={making.findings} /> : null}
        </>
      }
    >
      <div className="begin">
        <form className="begin-form" onSubmit={(event) => event.preventDefault()}>
          <SilhouetteFields ranges={ranges} form={form} wrong={wrong} onChange={setForm} />
        </form>
        <div className="begin-preview">{family === null ? null : <Preview family={family} />}</div>
      </div>
    </Sheet>
  );
};
