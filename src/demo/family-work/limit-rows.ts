import { INVENTED } from "./job-rows.ts";

/** Ends of the limits every invented car line has on file; mm unless said, all invented. */
export interface LimitFigures {
  readonly maker: string;
  readonly frontDisc: number;
  readonly rearDisc: number;
  readonly discRunOut: number;
  readonly pads: number;
  /** Cold pressures from and to, bar. */
  readonly pressures: { readonly front: readonly [number, number]; readonly rear: readonly [number, number] };
  readonly ballJoints: readonly (readonly [axle: "front" | "rear", place: string, play: number, state: string])[];
  readonly bushes: readonly (readonly [axle: "front" | "rear", place: string, lostTravel: number])[];
  readonly bearingPlay: number;
  readonly steeringPlay: number;
  readonly bumpStop: number;
  readonly boilingC: number;
}

/** Limits of an invented car line with whose they are: its made-up maker, the law of a made-up land, the demo workshop, practice, memory. */
export function limitRows(figures: LimitFigures): object[] {
  const maker = { owner: "maker", source: `${INVENTED}: ${figures.maker}` };
  const law = { owner: "law", source: `${INVENTED}: road act of Merland, a land that does not exist` };
  const workshop = { owner: "workshop", source: INVENTED };
  const practice = { owner: "practice", source: INVENTED };
  const memory = { owner: "memory", source: INVENTED };
  const disc = (axle: "front" | "rear", least: number) => ({
    place: "disc/thickness",
    axle,
    quantity: "thickness",
    lower_mm: least,
    ...maker,
    grade: "repair-first",
  });
  return [
    disc("front", figures.frontDisc),
    disc("rear", figures.rearDisc),
    { place: "disc", quantity: "thickness-variation", upper_mm: 0.018, ...workshop, grade: "plan" },
    { place: "disc/runout", quantity: "run-out", upper_mm: figures.discRunOut, ...maker, grade: "plan" },
    { place: "pads/thickness", quantity: "pad-thickness", lower_mm: figures.pads, ...maker, grade: "repair-first" },
    { place: "pads/thickness", quantity: "pad-thickness", lower_mm: 4.5, ...workshop, grade: "watch" },
    ...(["front", "rear"] as const).map((axle) => ({
      place: "tyre/pressure",
      axle,
      quantity: "pressure",
      lower_bar: figures.pressures[axle][0],
      upper_bar: figures.pressures[axle][1],
      load_state: "standing",
      ...maker,
      grade: "plan",
    })),
    { place: "tyre/tread", quantity: "tread", lower_mm: 1.8, ...law, grade: "repair-first" },
    { place: "tyre/tread", quantity: "tread", lower_mm: 3.4, ...workshop, grade: "plan" },
    { place: "caliper/guides", quantity: "slide-force", upper_n: 85, ...workshop, grade: "plan" },
    { place: "caliper/piston", quantity: "drag-torque", upper_nm: 5.5, ...workshop, grade: "plan" },
    { place: "brakes/fluid", quantity: "boiling-point", lower_c: figures.boilingC, ...maker, grade: "plan" },
    {
      place: "wheel-bearing",
      quantity: "play",
      upper_mm: figures.bearingPlay,
      load_state: "hanging",
      ...maker,
      grade: "repair-first",
    },
    { place: "wheel/runout", quantity: "run-out", upper_mm: 0.9, ...practice, grade: "plan" },
    {
      place: "steering/free-play",
      axle: "front",
      quantity: "play",
      upper_mm: figures.steeringPlay,
      load_state: "standing",
      ...law,
      grade: "repair-first",
    },
    { place: "damper/function", quantity: "rebounds", upper: 2.5, load_state: "standing", ...practice, grade: "plan" },
    {
      place: "bump-stop",
      axle: "front",
      quantity: "free-height",
      lower_mm: figures.bumpStop,
      ...memory,
      grade: "plan",
    },
    ...figures.ballJoints.map(([axle, place, play, state]) => ({
      place,
      axle,
      quantity: "play",
      upper_mm: play,
      load_state: state,
      ...maker,
      grade: "repair-first",
    })),
    ...figures.bushes.map(([axle, place, lost]) => ({
      place,
      axle,
      quantity: "lost-travel",
      upper_mm: lost,
      load_state: "hanging",
      ...practice,
      grade: "plan",
    })),
  ];
}
