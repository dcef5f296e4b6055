import { Link } from "@tanstack/react-router";
import { PlacePage } from "./place-page.tsx";

const LINE = { fill: "none", stroke: "var(--ink)", strokeWidth: 1.2 } as const;
const AXIS = { stroke: "var(--hair)", strokeDasharray: "16 4 2 4" } as const;

/** Counter: questions about what fits, before it exists. */
export const CounterPage = () => (
  <PlacePage
    place="Counter"
    sub="does this fit that"
    meanwhile={
      <>
        <p>
          <Link to="/families">Families</Link>: the underside of a car line names every place and its rubber, and its
          sheet the variants with what tells them apart.
        </p>
        <p>
          <Link to="/">Today</Link>: the plan of a visit prices the parts of each remedy, and its job card says which
          fasteners are new.
        </p>
      </>
    }
    willBe={[
      { name: "Does it fit", says: "two parts that look alike, and the one measurement that tells them apart" },
      {
        name: "What belongs in the box",
        says: "from the fasteners a job loosens, so nothing is missing with the car in the air",
      },
      { name: "Is the standard part enough", says: "for this use, or where it stops being so" },
    ]}
    drawing={
      <>
        <path d="M0 60H220" {...AXIS} />
        <path d="M20 30h70v60H20zM42 30v60M68 30v60" {...LINE} />
        <path d="M130 26h70v68h-70zM152 26v68M178 26v68" {...LINE} />
        <path d="M90 40h40M90 80h40" {...LINE} strokeDasharray="4 3" />
      </>
    }
  />
);

/** Bench: the old part beside the new, before it exists. */
export const BenchPage = () => (
  <PlacePage
    place="Bench"
    sub="the old part beside the new"
    meanwhile={
      <>
        <p>
          <Link to="/families">Families</Link>: mark a bush torn, loose or firmer on the underside, and the geometry
          shows what it does against a sound one.
        </p>
        <p>
          <Link to="/">Today</Link>: what calliper and hand find is kept with its place under the readings and the
          underside of a visit.
        </p>
      </>
    }
    willBe={[
      { name: "Side by side", says: "removed part and new one at one scale, with dimension lines between them" },
      { name: "Differs, same, or not to be told by hand", says: "what calliper and hand found, and how sure that is" },
      { name: "Hand test", says: "movement for a stated force, sound and torn" },
    ]}
    drawing={
      <>
        <path d="M0 60H220" {...AXIS} />
        <path d="M20 20h60v80H20zM40 20v80M60 20v80" {...LINE} />
        <path d="M140 20h60v80h-60zM160 20v80M180 20v80" {...LINE} />
        <path d="M80 20h60M80 100h60" {...LINE} strokeWidth={0.8} />
      </>
    }
  />
);

/** Tally: what the workshop has seen over all cars, before it exists. */
export const TallyPage = () => (
  <PlacePage
    place="Tally"
    sub="what this workshop has seen"
    meanwhile={
      <>
        <p>
          <Link to="/">Today</Link>: every look of every visit is kept; what is recorded now will count here.
        </p>
        <p>
          <Link to="/families">Families</Link>: the wear calendar of a car line shows bands from practice, marked so.
        </p>
      </>
    }
    willBe={[
      { name: "When it goes", says: "each position over distance, with how many cars it rests on" },
      { name: "Was it the cause", says: "which finding cured the complaint, and which did not" },
      { name: "When to look", says: "the interval that keeps worn and unseen rare" },
    ]}
    drawing={
      <>
        <path d="M20 100H200M20 100V20" {...LINE} />
        <path d="M20 98C90 96 90 30 190 26" {...LINE} strokeWidth={2} />
        <path d="M60 100v6M100 100v6M140 100v6M180 100v6" {...LINE} />
      </>
    }
  />
);
