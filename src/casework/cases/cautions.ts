/** One caution of the table, by its number; shown with every step it belongs to. */
export interface Caution {
  readonly number: number;
  readonly when: string;
  readonly text: string;
  readonly source: string;
}

/** Source keys in docs/sources.md; the vehicle maker's data, local codes and licensed practice come before every line here. */
export const cautions: readonly Caution[] = [
  {
    number: 1,
    when: "any work under the car",
    text: "Never go under a car held by a jack only. Rated stands in good order on hard level ground, at the maker's points, the wheels on the ground chocked, the right pins in the stands.",
    source: "jacking-rules",
  },
  {
    number: 2,
    when: "two-post lift",
    text: "Arms at the maker's pads, weight balanced; rock the car 100 to 200 mm up. An extra stand when heavy parts come off.",
    source: "from memory",
  },
  {
    number: 4,
    when: "air suspension",
    text: "Set jacking or service mode first: the car may drop or rise by itself. Release the pressure before anything is loosened.",
    source: "jacking-rules",
  },
  {
    number: 5,
    when: "springs",
    text: "A compressor rated for the coil, hooks on sound coils, equal turns. Never stand in line with the spring, never use an impact tool.",
    source: "from memory",
  },
  {
    number: 6,
    when: "gas dampers",
    text: "Never heat, drill or cut one: the rod pushes out. Dispose of it by the maker's written way only.",
    source: "from memory",
  },
  {
    number: 7,
    when: "brake dust",
    text: "Treat it as harmful: no compressed air, no dry brush; wet, or a vacuum with a fine filter.",
    source: "brake-dust-rules",
  },
  {
    number: 8,
    when: "brake fluid",
    text: "Keep it from eyes, skin and paint. Never from an open can, never mixed with mineral or silicone fluid.",
    source: "from memory",
  },
  {
    number: 9,
    when: "after any brake work",
    text: "The pedal must be hard before the car moves. Look for leaks under pressure; make the first stop at walking pace.",
    source: "common practice, no source",
  },
  {
    number: 10,
    when: "electric parking brake",
    text: "Service mode first; keep your fingers out, power may wake when a door opens.",
    source: "from memory",
  },
  {
    number: 11,
    when: "high voltage",
    text: "Over 60 V DC is dangerous. Orange cables: only trained and authorised people; switch off, secure, wait as the maker says, prove dead. No jacking on the battery.",
    source: "high-voltage-rules",
  },
  {
    number: 12,
    when: "torque",
    text: "Angle-tightened bolts once only; a calibrated wrench; rubber bushes finally tightened at ride height; the last check signed. Whose torque it is stands beside it.",
    source: "from memory",
  },
  {
    number: 13,
    when: "wheels",
    text: "Tighten in a star with the car light on its wheels, finally on the ground; check again after 50 to 100 km.",
    source: "wheel-retorque",
  },
  {
    number: 18,
    when: "test drive",
    text: "Insurance, plate, belt, route, weather; two people when a noise is judged.",
    source: "common practice, no source",
  },
  {
    number: 19,
    when: "licence and scope",
    text: "Some places license brake and steering work or name who may certify a change. This gives hints, not a permission.",
    source: "from memory",
  },
  {
    number: 22,
    when: "an owner drives on against advice",
    text: "Write down what was found in plain words and have it signed. Never threaten, never make it up.",
    source: "common practice, no source",
  },
];

/** The cautions with these numbers, in their order. */
export const cautionsFor = (numbers: readonly number[]): readonly Caution[] =>
  cautions.filter((c) => numbers.includes(c.number));
