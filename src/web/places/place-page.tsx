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
  /** What can be done meanwhile, with the page that does it. */
  readonly meanwhile: ReactNode;
}

/** A place without its pages: says what will be here, and what does the work until then. */
export const PlacePage = ({ place, sub, willBe, drawing, meanwhile }: PlacePageProps) => (
  <Sheet
    name={place}
    sub={sub}
    place={place}
    titleBlock={{
      title: place,
      note: "what will be here",
      rows: [
        [
          { label: "Units", value: "mm, °, N" },
          { label: "Sheet", value: "1 of 1" },
        ],
      ],
    }}
    margin={
      <>
        <h2 className="heading">Until then</h2>
        <p className="margin-lead">What the {place} will do in one place, these pages do in part:</p>
        <div className="meanwhile">{meanwhile}</div>
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
