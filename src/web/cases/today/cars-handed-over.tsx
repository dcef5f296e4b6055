import { Link } from "@tanstack/react-router";
import { formatDay } from "../case/case-sheet.tsx";
import type { CarLine } from "./load-today.ts";

/** Cars handed over last come first; more than this are found by their plate. */
const MOST = 8;

/** Cars that have been here and have gone again. */
export const CarsHandedOver = ({ cars }: { readonly cars: readonly CarLine[] }) => {
  const gone = cars
    .flatMap((line) => (line.latest?.body.closed ? [{ ...line, latest: line.latest }] : []))
    .toSorted((one, other) => (one.latest.body.date < other.latest.body.date ? 1 : -1));
  if (gone.length === 0) return null;
  return (
    <section className="today-gone">
      <div className="today-work-head">
        <h2>Handed over</h2>
        <span className="note">
          {gone.length > MOST ? `the last ${MOST} of ${gone.length}; type a plate above for the others` : ""}
        </span>
      </div>
      <ul className="gone-list">
        {gone.slice(0, MOST).map(({ id, car, visits, latest }) => (
          <li key={id}>
            <Link to="/cases/$visit/hand-over" params={{ visit: latest.id }} className="work-name">
              {car.registration || car.name}
            </Link>
            <span>{car.registration === "" ? "" : car.name}</span>
            <span className="label">{formatDay(latest.body.date)}</span>
            <span className="note">{visits === 1 ? "one visit" : `${visits} visits`}</span>
          </li>
        ))}
      </ul>
    </section>
  );
};
