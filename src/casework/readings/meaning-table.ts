import type { AxleName } from "#vehicle";
import type { ReasonSubject } from "../cases/place-finding.ts";

/** What a reading beyond what it is held against can come from. Source key trade-causes (from memory). */
export interface MeaningRow {
  readonly about: readonly ReasonSubject[];
  /** null: beyond on either side. */
  readonly towards: "less" | "more" | null;
  readonly axle: AxleName | null;
  /** Causes of the table of causes, in the order they are looked for. */
  readonly causes: readonly string[];
  /** A complaint whose shares tell how often each cause is behind it; null: none says. */
  readonly complaint: string | null;
}

export const meaningRows: readonly MeaningRow[] = [
  {
    about: ["ride-height"],
    towards: "less",
    axle: null,
    causes: [
      "coil-spring-broken",
      "coil-spring-sagged",
      "spring-seated-wrong-pad-missing",
      "bushes-tightened-hanging",
      "bent-arm-knuckle-or-strut",
    ],
    complaint: "one-corner-sits-low",
  },
  {
    about: ["ride-height"],
    towards: "more",
    axle: null,
    causes: ["bushes-tightened-hanging", "spring-seated-wrong-pad-missing"],
    complaint: null,
  },
  {
    about: ["camber"],
    towards: null,
    axle: "front",
    causes: [
      "ride-height-wrong-for-the-settings",
      "upper-inner-bush",
      "upper-outer-joint",
      "lower-ball-joint",
      "front-lower-bush",
      "subframe-shifted",
      "bent-arm-knuckle-or-strut",
    ],
    complaint: null,
  },
  {
    about: ["camber"],
    towards: null,
    axle: "rear",
    causes: [
      "ride-height-wrong-for-the-settings",
      "rear-camber-bush",
      "rear-trailing-bush",
      "subframe-shifted",
      "bent-arm-knuckle-or-strut",
    ],
    complaint: null,
  },
  {
    about: ["toe", "total-toe"],
    towards: null,
    axle: "front",
    causes: [
      "outer-tie-rod-joint-play",
      "inner-tie-rod-joint-play",
      "front-lower-bush",
      "rack-mounting-loose",
      "ride-height-wrong-for-the-settings",
      "bent-arm-knuckle-or-strut",
    ],
    complaint: null,
  },
  {
    about: ["toe", "total-toe", "thrust"],
    towards: null,
    axle: "rear",
    causes: [
      "rear-toe-link-joint",
      "rear-trailing-bush",
      "subframe-shifted",
      "ride-height-wrong-for-the-settings",
      "bent-arm-knuckle-or-strut",
    ],
    complaint: null,
  },
  {
    about: ["caster"],
    towards: null,
    axle: "front",
    causes: [
      "hydraulic-bush-leaked",
      "front-lower-bush",
      "upper-inner-bush",
      "subframe-shifted",
      "ride-height-wrong-for-the-settings",
      "bent-arm-knuckle-or-strut",
    ],
    complaint: null,
  },
];

/** Causes no look at their place rules out, with the test that does, by the table of tests. */
export const tellingTests: Readonly<Record<string, string>> = {
  "coil-spring-sagged": "spring-free-length-rate-on",
  "bushes-tightened-hanging": "loosen-settle-retighten-arm-bolts",
  "bent-arm-knuckle-or-strut": "steering-axis-inclination-included-angle",
};
