import type { FindingKind, Grade, PositionKind } from "#vehicle";
import type { SignName } from "./look.ts";

/** What a sign is called on screen and paper. */
export const signWords: Readonly<Record<SignName, string>> = {
  "surface-cracks": "fine surface cracks",
  "deep-cracks": "deep cracks",
  "web-torn": "web torn",
  "sleeve-off-centre": "sleeve off centre",
  "no-spring-back": "does not spring back",
  "oil-trace": "oil trace",
  "fluid-gone": "fluid gone",
  separated: "separated",
  "metal-contact": "metal on metal",
  "play-felt": "play felt by hand",
  "boot-split": "boot split",
  "boot-perished": "boot perished",
  "film-above-seat": "oil film above the spring seat",
  "film-below-seat": "oil film below the spring seat",
  "wet-streams": "wet, streams of oil",
  "no-damping": "no damping",
  "rebounds-differ": "rebounds differ left to right",
  broken: "broken",
  crumbled: "crumbled",
  seized: "seized",
  stiff: "stiff",
  "cracked-edge": "crack open to the edge",
  "blue-spots": "blue spots",
  deposits: "patches of pad deposit",
  scored: "scored",
  lip: "rust lip",
  "cord-seen": "cord seen",
  bulge: "bulge",
  "uneven-wear": "worn unevenly",
  feathered: "feathered tread",
  cupped: "cupped tread",
  "one-shoulder": "one shoulder worn",
  corroded: "corroded",
  wet: "wet",
  chafed: "chafed",
  rough: "rough when turned",
  "loose-bolt": "bolt loose",
  "marks-moved": "paint marks have moved",
  hot: "hotter than the other side",
  "fault-stored": "fault stored",
  "cannot-reach": "cannot be reached",
  "out-of-place": "out of its place",
};

type GradeTable = Readonly<Partial<Record<SignName, Grade>>>;

/**
 * Grade a sign means by the kind of thing it is seen on. Origin: grades of bushes, damper leaks and points per corner
 * after the workshop scale in docs/sources.md, key workshop-scale (from memory; a maker's or legal figure counts before it).
 * Separation, metal contact, leaks and cracks are dangerous by themselves and may reach repair first or more.
 */
const byKind: Readonly<Partial<Record<PositionKind, GradeTable>>> = {
  bush: {
    "surface-cracks": 1,
    "deep-cracks": 2,
    "no-spring-back": 3,
    "web-torn": 3,
    "sleeve-off-centre": 3,
    separated: 4,
    "metal-contact": 4,
    "oil-trace": 1,
    "loose-bolt": 3,
  },
  "hydraulic-bush": {
    "surface-cracks": 1,
    "deep-cracks": 2,
    "oil-trace": 2,
    "fluid-gone": 2,
    "no-spring-back": 3,
    "web-torn": 3,
    "sleeve-off-centre": 3,
    separated: 4,
    "metal-contact": 4,
    "loose-bolt": 3,
  },
  "ball-joint": { "boot-perished": 2, "boot-split": 3, "play-felt": 3, stiff: 2, separated: 4, "loose-bolt": 4 },
  "strut-mount": { "surface-cracks": 1, "deep-cracks": 2, stiff: 2, separated: 3, "loose-bolt": 4 },
  spring: { corroded: 1, broken: 3, "out-of-place": 3 },
  damper: {
    "film-above-seat": 0,
    "film-below-seat": 1,
    "wet-streams": 3,
    "rebounds-differ": 2,
    "no-damping": 3,
    "loose-bolt": 3,
  },
  "bump-stop": { "surface-cracks": 1, crumbled: 2, "out-of-place": 2 },
  bearing: { rough: 3, "play-felt": 3 },
  "hub-face": { corroded: 1 },
  "bar-link": { "boot-split": 1, "play-felt": 2, separated: 3, "loose-bolt": 3 },
  "bar-bush": { "surface-cracks": 1, "play-felt": 1, "out-of-place": 2 },
  boot: { "surface-cracks": 1, "boot-perished": 2, "boot-split": 2 },
  "drive-shaft": { "boot-split": 2, "play-felt": 3 },
  hose: { "surface-cracks": 2, chafed: 3, bulge: 3, wet: 4, "cord-seen": 4 },
  disc: { lip: 1, scored: 2, deposits: 2, "blue-spots": 2, corroded: 2, "cracked-edge": 4 },
  pads: { "uneven-wear": 2, "metal-contact": 4 },
  caliper: { stiff: 2, seized: 3, wet: 4 },
  "parking-brake": { stiff: 2, seized: 3 },
  tyre: { "one-shoulder": 1, feathered: 1, cupped: 1, "uneven-wear": 1, bulge: 4, "cord-seen": 4 },
  wheel: { corroded: 1, "cracked-edge": 4, "out-of-place": 3 },
  "wheel-bolts": { corroded: 1, "loose-bolt": 4 },
  rack: { "play-felt": 3, wet: 3 },
  "rack-mount": { "loose-bolt": 3, "surface-cracks": 1 },
  "steering-play": { "play-felt": 3 },
  "subframe-mount": {
    "surface-cracks": 1,
    "deep-cracks": 2,
    "marks-moved": 2,
    corroded: 2,
    separated: 4,
    "loose-bolt": 3,
  },
  "differential-mount": { "surface-cracks": 1, "web-torn": 2, separated: 3, "oil-trace": 1 },
  "level-sensor": { "fault-stored": 2, broken: 2, corroded: 1 },
  shield: { chafed: 2, "out-of-place": 1 },
  body: { corroded: 3 },
};

/** Signs that older records may hold and no entry offers any more: a plain bush has no oil in it to lose. */
const NOT_OFFERED: Readonly<Partial<Record<PositionKind, readonly SignName[]>>> = { bush: ["oil-trace"] };

/** Signs that can be seen on a kind of position, in the order an entry offers them; "cannot be reached" always last. */
export function signsFor(kind: PositionKind): readonly SignName[] {
  const known = Object.keys(byKind[kind] ?? {}) as SignName[];
  return [...known.filter((sign) => NOT_OFFERED[kind]?.includes(sign) !== true), "cannot-reach"];
}

/** Grade a sign means on a kind of position; null where the sign says nothing there (or that nobody could look). */
export function gradeOfSign(kind: FindingKind, sign: SignName): Grade | null {
  return (byKind as Readonly<Partial<Record<FindingKind, GradeTable>>>)[kind]?.[sign] ?? null;
}

/** Play from which a ball joint that clunks is about to part, metres (workshop-scale, from memory). */
export const PLAY_ABOUT_TO_PART = 0.002;

/**
 * Grade a felt play means without a maker's figure, play in metres along or across the joint: any play of a ball joint
 * asks for repair first, from 2 mm on the car is not to be driven; a rubber joint that moves freely asks for repair
 * first. Source: workshop-scale (from memory); a maker's or legal figure counts before it.
 */
export function gradeOfPlay(kind: PositionKind, play: number): Grade {
  if (!(play > 0)) return 0;
  return kind === "ball-joint" && play >= PLAY_ABOUT_TO_PART ? 4 : 3;
}

/** Signs of a hydraulic bush that has lost its fluid: its rubber can be whole (trade-causes, from memory). */
export const SIGNS_OF_FLUID_GONE: readonly SignName[] = ["oil-trace", "fluid-gone"];

/** Signs of a rubber that is torn through, cracked or parted from its metal. */
export const SIGNS_OF_TORN: readonly SignName[] = [
  "surface-cracks",
  "deep-cracks",
  "no-spring-back",
  "web-torn",
  "sleeve-off-centre",
  "separated",
  "metal-contact",
];

/** Which torn grade of a bush's rates the seen signs mean: the grade itself, 4 (separated) is not computed. */
export function tornGrade(grade: Grade | null): 1 | 2 | 3 | null {
  return grade === 1 || grade === 2 || grade === 3 ? grade : null;
}
