import { getRouteApi, Link } from "@tanstack/react-router";
import { useMemo, useState } from "react";
import { parseSilhouette } from "#contract";
import { INVENTED_NOTE, type PositionStates } from "#drawing";
import { type Family, positionsOf } from "../car.ts";
import { formatDay } from "../cases/case/case-sheet.tsx";
import { today as dayNow } from "../cases/today/begin-case.ts";
import { CarInWork } from "../cases/today/car-in-work.tsx";
import { CarsHandedOver } from "../cases/today/cars-handed-over.tsx";
import type { CarLine } from "../cases/today/load-today.ts";
import { TakeIn } from "../cases/today/take-in.tsx";
import { NoCarMargin, TodayMargin } from "../cases/today/today-margin.tsx";
import { useSeenCars } from "../cases/today/use-seen-cars.ts";
import { UnsentNotice } from "../cases/unsent/unsent-notice.tsx";
import { SmallCar } from "../scene/small-car.tsx";
import { Sheet } from "../shell/sheet.tsx";

const route = getRouteApi("/");

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

const isInWork = (line: CarLine): line is CarLine & { readonly latest: NonNullable<CarLine["latest"]> } =>
  line.latest !== null && !line.latest.body.closed;

/** Longest waiting first, then by date. */
const byWait = (one: CarLine, other: CarLine): number => {
  const key = ({ latest }: CarLine) => latest?.body.waits[0]?.since ?? `9${latest?.body.date ?? ""}`;
  return key(one) < key(other) ? -1 : 1;
};

const countWords = (cars: readonly CarLine[]): string => {
  const held = cars.filter(({ latest }) => (latest?.body.waits.length ?? 0) > 0).length;
  const all = cars.length === 1 ? "one car" : `${cars.length} cars`;
  return held === 0 ? `${all}, none held` : `${all}, ${held} held`;
};

/** Today: begin a case, the cars in work, where each stands and what it waits for. */
export const TodayPage = () => {
  const { cars, settings } = route.useLoaderData();
  const inWork = useMemo(() => cars.filter(isInWork).toSorted(byWait), [cars]);
  const seen = useSeenCars(inWork);
  const [chosen, setChosen] = useState<string | null>(null);
  const day = dayNow();
  // Where an earlier build left no settings, the first car says what the workshop is.
  const invented = settings?.invented ?? cars[0]?.car.invented ?? false;
  const selected = inWork.find(({ id }) => id === chosen) ?? inWork[0] ?? null;
  const selectedVisit = selected?.latest ?? null;
  return (
    <Sheet
      name="Today"
      sub={formatDay(day)}
      place="Today"
      notice={<UnsentNotice />}
      subject={chosen}
      titleBlock={{
        title: "Today",
        note: invented
          ? INVENTED_NOTE
          : inWork.length === 0
            ? "nothing here yet"
            : "drawn from this workshop's records",
        rows: [
          [
            {
              label: "Workshop",
              value: settings === null || settings.workshop === "" ? "name not on file" : settings.workshop,
            },
          ],
          [
            { label: "Cars", value: inWork.length === 0 ? "none in work" : `${inWork.length} in work` },
            { label: "Date", value: formatDay(day) },
            { label: "Sheet", value: "1 of 1" },
          ],
        ],
      }}
      margin={
        selected === null || selectedVisit === null ? (
          <NoCarMargin />
        ) : (
          <TodayMargin line={selected} visit={selectedVisit} seen={seen.get(selected.id)} today={day} />
        )
      }
    >
      <div className="today">
        {invented ? (
          <p className="today-demo">
            This is an invented workshop: every car, name and figure in it is made up. Yours begins empty, in a folder
            of its own.
          </p>
        ) : null}
        <section className="today-start">
          <TornCar />
          <div className="today-words">
            <h2 className="heading">A car in the bay</h2>
            <p className="label">What is worn, how sure, what it does, what now and what later.</p>
            <TakeIn cars={cars} invented={invented} />
          </div>
        </section>
        {inWork.length === 0 ? null : (
          <section className="today-work">
            <div className="today-work-head">
              <h2>In work</h2>
              <span className="note">{countWords(inWork)}</span>
            </div>
            <ul className="work-list">
              {inWork.map((line) => (
                <CarInWork
                  key={line.id}
                  line={line}
                  visit={line.latest}
                  seen={seen.get(line.id)}
                  today={day}
                  selected={line.id === selected?.id}
                  onSelect={() => setChosen(line.id)}
                />
              ))}
            </ul>
          </section>
        )}
        <CarsHandedOver cars={cars} />
        <section className="today-doors">
          <h2 className="empty-heading">Without a car</h2>
          <dl className="empty-list">
            <div>
              <dt>
                <Link to="/families/begin">Begin a car line</Link>
              </dt>
              <dd>from the silhouettes of its axles: what does a torn bush do to it?</dd>
            </div>
            <div>
              <dt>
                <Link to="/counter">A question at the counter</Link>
              </dt>
              <dd>does this fit that, and what belongs in the box</dd>
            </div>
            <div>
              <dt>
                <Link to="/bench">A part in the hand</Link>
              </dt>
              <dd>the old one beside the new</dd>
            </div>
          </dl>
        </section>
      </div>
    </Sheet>
  );
};
