import { getRouteApi } from "@tanstack/react-router";
import { useEffect, useRef } from "react";
import { MarginSection } from "../shell/margin-section.tsx";
import { Sheet } from "../shell/sheet.tsx";
import { SourceLink } from "../shell/source-link.tsx";
import { sourceGroups } from "./source-keys.ts";
import type { Source, SourceGroup } from "./sources.ts";

const route = getRouteApi("/reference");

const SourceRow = ({ source, open }: { readonly source: Source; readonly open: boolean }) => {
  const row = useRef<HTMLTableRowElement>(null);
  useEffect(() => {
    const view = row.current?.closest("main");
    if (!open || row.current === null || !view) return;
    // Unlike scrollIntoView this leaves the order of Tab as it is.
    const [own, room] = [row.current.getBoundingClientRect(), view.getBoundingClientRect()];
    view.scrollTop += own.top + own.height / 2 - (room.top + room.height / 2);
  }, [open]);
  return (
    <tr ref={row} data-open={open} aria-current={open ? "true" : undefined}>
      <th scope="row">
        <SourceLink source={source.key} />
      </th>
      <td>{source.gives}</td>
      <td>{source.citation === "none" ? "not on file" : source.citation}</td>
      <td>{source.status}</td>
    </tr>
  );
};

const Group = ({ group, open }: { readonly group: SourceGroup; readonly open: string | null }) => (
  <table className="sources">
    <caption>{group.title}</caption>
    <thead>
      <tr>
        <th scope="col">Key</th>
        <th scope="col">What it gives</th>
        <th scope="col">Citation</th>
        <th scope="col">Status</th>
      </tr>
    </thead>
    <tbody>
      {group.sources.map((source) => (
        <SourceRow key={source.key} source={source} open={source.key === open} />
      ))}
    </tbody>
  </table>
);

const SourceMargin = ({ source }: { readonly source: Source }) => (
  <>
    <h2 className="heading">{source.key}</h2>
    <MarginSection title="What it gives">{source.gives}</MarginSection>
    <MarginSection title="Citation">{source.citation === "none" ? "not on file" : source.citation}</MarginSection>
    <MarginSection title="Status">{source.status}</MarginSection>
  </>
);

/** Reference: every source by its key, and which are read, computed, from memory or invented. */
export const ReferencePage = () => {
  const { source: open } = route.useSearch();
  const all = sourceGroups.flatMap(({ sources }) => sources);
  const found = all.find(({ key }) => key === open) ?? null;
  return (
    <Sheet
      name="Reference"
      sub="where the figures come from"
      place="Reference"
      subject={found?.key ?? null}
      titleBlock={{
        title: "Sources",
        note: "the register of this program",
        rows: [
          [
            { label: "Sources", value: String(all.length) },
            { label: "Sheet", value: "1 of 1" },
          ],
        ],
      }}
      margin={
        found === null ? (
          <>
            <h2 className="heading">{open === undefined ? "Sources" : "No such source"}</h2>
            <p className="margin-lead">
              {open === undefined
                ? "Every constant and every check names one of these keys, or says that it is common practice, from memory or invented."
                : `No source has the key ${open}.`}
            </p>
            <p className="margin-lead">
              ± is one thing on every page and paper: twice the standard deviation. In 95 of 100 cases the true figure
              lies within it.
            </p>
            <p className="margin-lead">Methods and the words used follow.</p>
          </>
        ) : (
          <SourceMargin source={found} />
        )
      }
    >
      <div className="page">
        {sourceGroups.map((group) => (
          <Group key={group.title} group={group} open={found?.key ?? null} />
        ))}
      </div>
    </Sheet>
  );
};
