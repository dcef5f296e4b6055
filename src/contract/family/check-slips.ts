import type { Finding } from "#numeric";
import { type AxlePlaces, placesOf, withPlace } from "./axle-places.ts";
import { findDoubts } from "./check-order.ts";
import { checkReach } from "./check-reach.ts";
import { CONFIRM_POINTS, familyFinding, placeWords } from "./family-finding.ts";
import { slipsOf } from "./likely-slip.ts";
import type { LooseAxle } from "./loose-axle.ts";
import { computeWheelMotion, straying, type WheelMotion } from "./wheel-motion.ts";

/** What a slip must bring the motion of the wheel back to, to be what explains it (invented). */
const USUAL_STRAYING = 0.5;

/** One slip undone: the place it is about, what it may have been, and how far the wheel then strays. */
interface Undone {
  readonly path: string;
  readonly words: string;
  readonly straying: number;
  /** Place in the list of slips, the likeliest first. */
  readonly order: number;
}

/**
 * Points of an axle that is sound by itself but that no car has so: out of the order its links are named in, a strut lying
 * down, a wheel that runs off as it rises. One finding, at the point a single slip of which explains it best.
 * What no single slip explains is somebody's car: an odd motion alone is then no finding. Nothing is one where somebody
 * has confirmed the points.
 */
export function checkSlips(axle: LooseAxle): Finding[] {
  if (axle.pointsConfirmed) return [];
  const places = placesOf(axle);
  const doubts = findDoubts(axle, places);
  const motion = computeWheelMotion(axle, places);
  const astray = motion !== null && straying(motion) > 1;
  if (doubts.length === 0 && !astray) return [];
  const undone = slipsThatExplain(axle, places, new Set(doubts.flatMap(({ paths }) => paths)));
  const [doubt] = doubts;
  const best = undone.find(({ path }) => path === doubt?.paths[0]) ?? undone[0];
  if (best === undefined && doubt === undefined) return [];
  const path = best?.path ?? doubt?.paths[0] ?? "";
  const said = doubts.find(({ paths }) => paths.includes(path)) ?? doubt;
  return [
    familyFinding(
      said ? "points-out-of-order" : "wheel-runs-off",
      `${axle.name}.${path}`,
      placeWords(places.get(path) ?? [0, 0, 0]),
      said ? needed(said, path) : motionWords(motion),
      `${undone.length === 0 ? "Check the numbers of this point, and those of its pair." : hintOf(undone, path)} ${CONFIRM_POINTS}`,
    ),
  ];
}

const needed = ({ paths, needed }: { readonly paths: readonly string[]; readonly needed: string }, path: string) =>
  paths[0] === path ? needed : `a place that goes with ${paths[0]}, which needs ${needed}`;

/** Half as much again as the best is as good an explanation (invented). */
const AS_GOOD = 1.5;

/** Every single slip that would leave nothing in doubt and the wheel about where any other does, the likeliest first. */
function slipsThatExplain(axle: LooseAxle, places: AxlePlaces, doubted: ReadonlySet<string>): readonly Undone[] {
  const found = [...places].flatMap(([path, place]) =>
    doubted.size > 0 && !doubted.has(path)
      ? []
      : slipsOf(place).flatMap(({ words, meant }, order): Undone[] => {
          const moved = withPlace(axle, places, path, meant);
          if (findDoubts(axle, moved).length > 0 || checkReach(axle, true, moved).length > 0) return [];
          const motion = computeWheelMotion(axle, moved);
          const left = motion === null ? 0 : straying(motion);
          return left > USUAL_STRAYING ? [] : [{ path, words, straying: left, order }];
        }),
  );
  const least = Math.min(...found.map((one) => one.straying));
  return found
    .filter((one) => one.straying <= AS_GOOD * least + 0.05)
    .toSorted((a, b) => a.order - b.order || a.straying - b.straying);
}

const MOST_SAID = 2;

function hintOf(undone: readonly Undone[], path: string): string {
  const here = undone.filter((one) => one.path === path).slice(0, MOST_SAID);
  const elsewhere = undone.find((one) => one.path !== path);
  const said = here.map(({ words }) => words).join(" Or: ");
  return elsewhere === undefined ? said : `${said} If this one is right, look at ${elsewhere.path}: ${elsewhere.words}`;
}

function motionWords(motion: WheelMotion | "ends" | null): string {
  if (motion === null || motion === "ends")
    return "a linkage that lets the wheel rise and fall by 50 mm; this one ends before";
  const { toe, camber, foreAft, sideways } = motion;
  return `a wheel that stays in its place over 50 mm up and down; this one turns by ${toe.toFixed(1)}°, leans by ${camber.toFixed(1)}°, runs ${foreAft.toFixed(0)} mm along and ${sideways.toFixed(0)} mm across`;
}
