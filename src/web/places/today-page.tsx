import { Link } from "@tanstack/react-router";
import { parseSilhouette } from "#contract";
import type { PositionStates } from "#drawing";
import { type Family, positionsOf } from "../car.ts";
import { SmallCar } from "../scene/small-car.tsx";
import { Sheet } from "../shell/sheet.tsx";

const DOORS = [
  { name: "A car in the bay", says: "what is worn, what it does, what now or later" },
  { name: "A question at the counter", says: "does this fit that, and what belongs in the box" },
  { name: "A part in the hand", says: "the old one beside the new" },
];

const soundStates = (family: Family): PositionStates =>
  Object.fromEntries(positionsOf(family).map(({ id }) => [id, { grade: 0 as const }]));

const made = parseSilhouette({});
const TORN = "rear-left/trailing-link/inner-bush";
const STATES: PositionStates = "family" in made ? { ...soundStates(made.family), [TORN]: { grade: 3 } } : {};

/** A template car with one torn bush, as a sign of what the program is for. */
const TornCar = () =>
  "family" in made ? (
    <div className="today-car">
      <SmallCar family={made.family} states={STATES} selected={TORN} />
    </div>
  ) : null;

/** Today: no car is in work yet, so it offers the one thing that leads to a first answer. */
export const TodayPage = () => (
  <Sheet
    name="Today"
    sub="no car in work"
    place="Today"
    titleBlock={{
      title: "Today",
      note: "nothing here yet",
      rows: [
        [
          { label: "Cars in work", value: "none" },
          { label: "Units", value: "mm, °, N" },
          { label: "Sheet", value: "1 of 1" },
        ],
      ],
    }}
    margin={
      <>
        <h2 className="heading">Start with a car line</h2>
        <p className="margin-lead">
          You need no car and no hard points. Choose the axles by their silhouettes, tear a bush, read what it does,
          print the sheet.
        </p>
        <p className="margin-links">
          <Link to="/families">Look at the invented ones</Link>
        </p>
      </>
    }
  >
    <div className="today">
      <section className="today-start">
        <TornCar />
        <div className="today-words">
          <h2 className="heading">What does a torn bush do to a car?</h2>
          <p className="lead">From the silhouette of an axle to a printed sheet: no car, no hard points needed.</p>
          <Link to="/families/begin" className="press">
            Begin a car line
          </Link>
        </div>
      </section>
      <section>
        <h2 className="empty-heading">What will be here</h2>
        <dl className="empty-list">
          {DOORS.map(({ name, says }) => (
            <div key={name}>
              <dt>{name}</dt>
              <dd>{says}</dd>
            </div>
          ))}
          <div>
            <dt>In work</dt>
            <dd>each car on its job line, and what it waits for</dd>
          </div>
          <div>
            <dt>Due to be looked at again</dt>
            <dd>all cars along the next thousand kilometres</dd>
          </div>
        </dl>
      </section>
    </div>
  </Sheet>
);
