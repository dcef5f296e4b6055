import { Link } from "@tanstack/react-router";
import type { Finding } from "#contract";
import { PARTS, type PartName, placeOf, SECTIONS } from "./model/sections.ts";
import { parseSheetPath } from "./model/sheet-path.ts";

interface SectionLinksProps {
  readonly familyId: string;
  readonly part: PartName;
  readonly section: string;
  readonly findings: readonly Finding[];
}

/** How many findings lie in each section. */
const countBySection = (findings: readonly Finding[]): ReadonlyMap<string, number> => {
  const counts = new Map<string, number>();
  for (const { path } of findings) {
    const place = placeOf(parseSheetPath(path) ?? []);
    for (const name of [place.part, `${place.part} ${place.section}`]) counts.set(name, (counts.get(name) ?? 0) + 1);
  }
  return counts;
};

const Count = ({ count }: { readonly count: number | undefined }) =>
  count === undefined ? null : (
    <span className="section-count">
      {count}
      <span className="unseen"> to put right</span>
    </span>
  );

/** The parts of the sheet and the sections of the open one; a figure says how much is to put right there. */
export const SectionLinks = ({ familyId, part, section, findings }: SectionLinksProps) => {
  const counts = countBySection(findings);
  const params = { familyId };
  return (
    <nav className="sections" aria-label="Sections of the sheet">
      <ul className="section-row parts-row">
        {PARTS.map(({ name, title }) => (
          <li key={name}>
            <Link
              to="/families/$familyId/edit"
              params={params}
              search={{ part: name }}
              className="section-link"
              aria-current={name === part ? "true" : undefined}
            >
              {title} <Count count={counts.get(name)} />
            </Link>
          </li>
        ))}
      </ul>
      {SECTIONS[part].length < 2 ? null : (
        <ul className="section-row">
          {SECTIONS[part].map(({ name, title }) => (
            <li key={name}>
              <Link
                to="/families/$familyId/edit"
                params={params}
                search={{ part, section: name }}
                className="section-link"
                aria-current={name === section ? "page" : undefined}
              >
                {title} <Count count={counts.get(`${part} ${name}`)} />
              </Link>
            </li>
          ))}
        </ul>
      )}
    </nav>
  );
};
