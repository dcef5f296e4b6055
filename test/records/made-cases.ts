import type { CarDocument, Look, VisitDocument } from "#casework";
import { metresFromMm } from "#quantity";

/** A repeatable source of numbers from 0 to 1 (mulberry32, public domain). */
export const seededNumbers = (seed: number): (() => number) => {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
};

const hex = (value: number, digits: number): string => value.toString(16).padStart(digits, "0");

/** The n-th UUID of version 7: the time rises with n, the rest is n again. */
export const uuidOf = (n: number): string => {
  const time = hex(1_900_000_000_000 + n, 12);
  return `${time.slice(0, 8)}-${time.slice(8)}-7${hex(n % 4096, 3)}-8000-${hex(n, 12)}`;
};

/** When the looks of the tests are received; the invented workshop's clock. */
export const receivedAt = "2031-05-14T09:30:00.000Z";

/** The n-th look: reading, signs, nothing seen and not taken in turn, notes of every length so that rows spill over pages. */
export const makeLook = (n: number, changes: Partial<Look> = {}): Look => {
  const random = seededNumbers(n);
  const contents: readonly Look["content"][] = [
    {
      kind: "reading",
      quantity: "pad-thickness",
      value: metresFromMm(11 + Math.floor(random() * 1000) / 1000),
      u: 0.0001,
      point: "inner",
    },
    { kind: "signs", signs: ["deep-cracks", "oil-trace"] },
    { kind: "nothing-seen" },
    { kind: "not-taken", quantity: "tread" },
  ];
  return {
    id: uuidOf(n),
    car: "car-1",
    visit: "visit-1",
    place: "front-left/lower-arm/ball-joint",
    content: contents[n % contents.length] ?? { kind: "nothing-seen" },
    loadState: n % 2 === 0 ? "hanging" : null,
    instrument: n % 4 === 0 ? "calliper" : null,
    photo: null,
    note: n % 3 === 0 ? `Ø ${"seen ".repeat(Math.floor(random() ** 4 * 3000))}${n}` : null,
    who: "MK",
    at: "2031-05-14T11:29:00+02:00",
    ...changes,
  };
};

export const inventedCar: CarDocument = {
  registration: "UB 7",
  name: "Ouzel saloon, 2024",
  year: 2024,
  identityNumber: null,
  owner: null,
  family: "ouzel-saloon",
  variants: [{ label: "brake", choice: "312 mm", known: false }],
  distanceUnit: "km",
  odometerOffsetKm: 0,
  invented: true,
};

export const inventedVisit: VisitDocument = {
  car: "car-1",
  odometerKm: 84_000,
  date: "2031-05-14",
  by: "MK",
  bay: null,
  done: ["enquiry"],
  waits: [{ what: "part", label: "ball joint", since: "2031-05-14", due: null }],
  settled: null,
  closed: false,
};
