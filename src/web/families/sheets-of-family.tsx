import { Link } from "@tanstack/react-router";

/** The sheets of a car line as its title blocks number them, and what each answers. */
const SHEETS = [
  { to: "/families/$familyId/underside", sheet: 2, name: "Underside", answers: "what is worn, tapped on the drawing" },
  { to: "/families/$familyId/geometry", sheet: 3, name: "Geometry", answers: "what a worn place does to the wheel" },
  {
    to: "/families/$familyId/travel",
    sheet: 4,
    name: "Over travel",
    answers: "moving; curves of any figure",
  },
  { to: "/families/$familyId/hold", sheet: 5, name: "How to hold it", answers: "so that play shows to a hand" },
  { to: "/families/$familyId/car", sheet: 6, name: "Whole car", answers: "leaning, steered, in a bend" },
  { to: "/families/$familyId/match", sheet: 7, name: "Match to readings", answers: "from its own camber and toe" },
] as const;

/** The way from a family sheet to the other sheets of its car line. */
export const SheetsOfFamily = ({ familyId }: { readonly familyId: string }) => (
  <nav aria-label="Sheets of this car line">
    <ol className="sheets-of-family" start={2}>
      {SHEETS.map(({ to, sheet, name, answers }) => (
        <li key={to}>
          <span className="note" aria-hidden="true">
            {sheet}
          </span>
          <Link to={to} params={{ familyId }}>
            {name}
          </Link>
          <span className="note">{answers}</span>
        </li>
      ))}
    </ol>
  </nav>
);
