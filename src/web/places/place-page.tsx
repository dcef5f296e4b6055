import { Link } from "@tanstack/react-router";
import type { ReactNode } from "react";
import type { PlaceName } from "../shell/place-links.tsx";
import { Sheet } from "../shell/sheet.tsx";

interface PlacePageProps {
  readonly place: PlaceName;
  readonly sub: string;
  /** What will be here, in a few plain lines. */
  readonly willBe: readonly { readonly name: string; readonly says: string }[];
  /** SVG marks in a field of 220 by 120. */
  readonly drawing: ReactNode;
}

/** A place that is still empty: says what will be here and offers the one next thing. */
export const PlacePage = ({ place, sub, willBe, drawing }: PlacePageProps) => (
  <Sheet
    name={place}
    sub={sub}
    place={place}
    titleBlock={{
      title: place,
      note: "nothing here yet",
      rows: [
        [
          { label: "Units", value: "mm, °, N" },
          { label: "Sheet", value: "1 of 1" },
        ],
      ],
    }}
    margin={
      <>
        <h2 className="heading">Nothing here yet</h2>
        <p className="margin-lead">
          A car line comes first: its layouts, its rubber, what a torn bush does to the car.
        </p>
        <p className="margin-links">
          <Link to="/families/begin">Begin a car line</Link>
        </p>
      </>
    }
  >
    <div className="empty-place">
      <svg viewBox="0 0 220 120" className="empty-drawing" aria-hidden="true">
        {drawing}
      </svg>
      <h2 className="empty-heading">What will be here</h2>
      <dl className="empty-list">
        {willBe.map(({ name, says }) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{says}</dd>
          </div>
        ))}
      </dl>
    </div>
  </Sheet>
);
