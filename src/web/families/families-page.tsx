import { getRouteApi, Link } from "@tanstack/react-router";
import type { Finding } from "#contract";
import type { FamilyLine } from "../server/family-list.ts";
import { FindingsList } from "../shell/findings-list.tsx";
import { Sheet } from "../shell/sheet.tsx";
import { FamilyFileInput, ImportProgress } from "./family-import.tsx";
import { FamilyRows } from "./family-rows.tsx";
import { OffListRows, PutBack } from "./off-list-rows.tsx";
import { useFamilyImport } from "./use-family-import.ts";

const route = getRouteApi("/families");

const isInvented = (line: FamilyLine): boolean => !("findings" in line) && line.invented;

/** A file of the other kind the program reads: told by the keys a car line never has. */
const isLayoutFile = (findings: readonly Finding[]): boolean =>
  findings.some(({ code, path }) => code === "unknown-key" && (path === "bodies" || path === "layout"));

/** Said of the car line that was taken off last, with the way back; nothing once it stands on the list again. */
const JustTakenOff = ({ lines }: { readonly lines: readonly FamilyLine[] }) => {
  const { off } = route.useSearch();
  const line = lines.find(({ id }) => id === off);
  return (
    <div role="status">
      {line === undefined ? null : (
        <p className="just-off">
          {line.name} was taken off the list. Its file is kept, and cars that name it still open.
          <PutBack line={line} />
        </p>
      )}
    </div>
  );
};

const NoneOfYourOwn = () => (
  <p className="none-yet">
    None yet. <Link to="/families/begin">Begin a car line</Link> from the silhouettes of its axles, or read a family
    file in.
  </p>
);

/** Families: every car line this workshop knows, its own first. */
export const FamiliesPage = () => {
  const { families, examples } = route.useLoaderData();
  const importing = useFamilyImport();
  const listed = families.filter(({ off_list }) => !off_list);
  const offList = families.filter(({ off_list }) => off_list);
  const own = listed.filter((line) => !isInvented(line));
  const invented = listed.filter(isInvented);
  const all = [...families, ...examples];
  const inventedWords = `${invented.length + examples.length} invented`;
  return (
    <Sheet
      name="Families"
      sub={`${own.length} of your own, ${inventedWords}`}
      place="Families"
      titleBlock={{
        title: "Families",
        note: own.length === 0 ? "everything here is invented" : "invented ones say so",
        rows: [
          [
            { label: "Own", value: `${own.length} of your own` },
            { label: "Invented", value: inventedWords },
            { label: "Sheet", value: "1 of 1" },
          ],
        ],
      }}
      margin={
        <>
          <h2 className="heading">A car nobody has measured?</h2>
          <p className="margin-lead">
            Choose its axles by their silhouettes and give what a tape finds. Every figure then carries the band that
            such a start leaves.
          </p>
          <p className="margin-links">
            <Link to="/families/begin" className="press">
              Begin a car line
            </Link>
          </p>
          <p className="margin-lead">
            A suspension none of the silhouettes shows is a file of bodies, joints and links:{" "}
            <Link to="/layouts">look at one</Link>.
          </p>
          <FamilyFileInput importing={importing} />
          <ImportProgress importing={importing} />
        </>
      }
    >
      <div className="page">
        {importing.state.kind === "refused" ? (
          <section className="refused-file">
            <h2>{importing.state.fileName}</h2>
            {isLayoutFile(importing.state.findings) ? (
              <p>
                This looks like a layout of bodies, joints and links, not like a car line.{" "}
                <Link to="/layouts">Read it in on the page of layouts</Link>.
              </p>
            ) : null}
            <FindingsList findings={importing.state.findings} outcome="nothing was kept" />
          </section>
        ) : null}
        <JustTakenOff lines={offList} />
        <FamilyRows all={all} title="Your own" note="kept by this program" lines={own} none={<NoneOfYourOwn />} />
        {invented.length === 0 ? null : (
          <FamilyRows all={all} title="Invented" note="no such car exists" lines={invented} />
        )}
        {examples.length === 0 ? null : (
          <FamilyRows
            all={all}
            title="Invented, to look at"
            note="come with the program; no such car exists, and no car of yours can be of one of them"
            lines={examples}
          />
        )}
        {offList.length === 0 ? null : <OffListRows lines={offList} />}
      </div>
    </Sheet>
  );
};
