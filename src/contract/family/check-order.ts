import { type AxlePlaces, innerPath, outerPath, type Place } from "./axle-places.ts";
import { distanceMm } from "./check-points.ts";
import { placeWords } from "./family-finding.ts";
import type { LooseAxle } from "./loose-axle.ts";

/** What a place would have to be, given the others; the places any of which may be the wrong one, likeliest first. */
export interface Doubt {
  readonly paths: readonly string[];
  readonly needed: string;
}

/** How far an arm's axis may point across the car, in mm across per mm along: 35 degrees (invented). */
const MOST_ACROSS = 0.7;
/** How near to each other the body ends of an arm may stand, as a share of its longer leg (invented). */
const LEAST_BASE = 0.25;
/** How far a tie rod may point along the car, in mm along per mm across: 31 degrees (invented). */
const MOST_SWEPT = 0.6;
/** How long a link may be, and one named upper, in heights of the wheel centre (invented). */
const LONGEST = 2.8;
const LONGEST_UPPER = 1.7;
/** How low an end named upper, and how high one named lower may lie, in heights of the wheel centre (invented). */
const LOWEST_UPPER = 0.7;
const HIGHEST_LOWER = 1.2;
/** How far the line of a strut, a spring or a damper may lean, in mm along or across per mm of height (invented). */
const MOST_LEAN = { strut: 0.6, spring: 0.6, damper: 1.4 } as const;

/** What hard points say against each other or against the names of their links; nothing where all of it goes together. */
export function findDoubts(axle: LooseAxle, places: AxlePlaces): readonly Doubt[] {
  return [
    ...namedFrontAndRear(axle, places),
    ...namedUpperAndLower(axle, places),
    ...namedHeights(axle, places),
    ...armsAcross(axle, places),
    ...sweptTieRods(axle, places),
    ...longLinks(axle, places),
    ...trailing(axle, places),
    ...leaning("strut", places.get("strut.axis_point_mm"), "strut.axis_point_mm", places),
    ...(["spring", "damper"] as const).flatMap((part) =>
      leaning(part, movingPlace(axle, places, part), `${part}.seat.moving_mm`, places),
    ),
  ];
}

/** A name without the word that tells it from its pair. */
const without = (name: string, word: string): string =>
  name
    .split("-")
    .map((part) => (part === word ? "*" : part))
    .join("-");

/** Pairs of links whose names differ by one word only: "lower-arm-front" and "lower-arm-rear". */
const pairsOf = (axle: LooseAxle, one: string, other: string): readonly (readonly [number, number])[] =>
  axle.links.flatMap((first, i) =>
    axle.links.flatMap((second, j): (readonly [number, number])[] => {
      const [a, b] = [first.name, second.name];
      const paired = a !== undefined && b !== undefined && a.split("-").includes(one) && b.split("-").includes(other);
      return paired && without(a, one) === without(b, other) ? [[i, j]] : [];
    }),
  );

function namedFrontAndRear(axle: LooseAxle, places: AxlePlaces): readonly Doubt[] {
  return pairsOf(axle, "front", "rear").flatMap(([front, rear]) => {
    const [ahead, behind] = [innerPath(front), innerPath(rear)];
    const [a, b] = [places.get(ahead), places.get(behind)];
    return a && b && a[0] <= b[0]
      ? [
          {
            paths: [ahead, behind],
            needed: `x above ${b[0]}, as the inner end of ${axle.links[rear]?.name} lies behind that of ${axle.links[front]?.name}`,
          },
        ]
      : [];
  });
}

const isNamed = (name: string | undefined, word: string): boolean => name?.split("-").includes(word) ?? false;

/** Every upper end lies above every lower one, on the body and on the knuckle. */
function namedUpperAndLower(axle: LooseAxle, places: AxlePlaces): readonly Doubt[] {
  return [innerPath, outerPath].flatMap((path) =>
    axle.links.flatMap(({ name: upper }, i) =>
      axle.links.flatMap(({ name: lower }, j): Doubt[] => {
        if (!isNamed(upper, "upper") || !isNamed(lower, "lower")) return [];
        const [a, b] = [places.get(path(i)), places.get(path(j))];
        return a && b && a[2] <= b[2]
          ? [
              {
                paths: [path(i), path(j)],
                needed: `z above ${b[2]}, as this end of ${lower} lies under that of ${upper}`,
              },
            ]
          : [];
      }),
    ),
  );
}

/** An upper end lies about as high as the wheel centre or higher, a lower one about as high or lower. */
function namedHeights(axle: LooseAxle, places: AxlePlaces): readonly Doubt[] {
  const radius = axle.wheel?.centre_mm[2];
  if (radius === undefined) return [];
  return [innerPath, outerPath].flatMap((path) =>
    axle.links.flatMap(({ name }, i): Doubt[] => {
      const [lowest, highest] = [LOWEST_UPPER * radius, HIGHEST_LOWER * radius];
      const z = places.get(path(i))?.[2];
      if (z === undefined) return [];
      if (isNamed(name, "upper") && z < lowest)
        return [
          {
            paths: [path(i)],
            needed: `z of at least ${Math.round(lowest)} mm at ${name}, by the height of the wheel centre`,
          },
        ];
      if (isNamed(name, "lower") && z > highest)
        return [
          {
            paths: [path(i)],
            needed: `z of at most ${Math.round(highest)} mm at ${name}, by the height of the wheel centre`,
          },
        ];
      return [];
    }),
  );
}

/** The axis an arm swings about lies along the car rather than across it. */
function armsAcross(axle: LooseAxle, places: AxlePlaces): readonly Doubt[] {
  return axle.links.flatMap(({ arm }, i) =>
    axle.links.slice(i + 1).flatMap((other, k): Doubt[] => {
      if (arm === undefined || other.arm !== arm) return [];
      const paths = [innerPath(i), innerPath(i + 1 + k)] as const;
      const [a, b] = paths.map((path) => places.get(path)) as [Place | undefined, Place | undefined];
      const outer = places.get(outerPath(i));
      if (!a || !b || !outer) return [];
      const leg = Math.max(distanceMm(a, outer), distanceMm(b, outer));
      return Math.abs(a[1] - b[1]) > MOST_ACROSS * Math.abs(a[0] - b[0]) || distanceMm(a, b) < LEAST_BASE * leg
        ? [
            {
              paths,
              needed: `an axis of ${arm} that lies along the car and is a quarter of a leg or more long: it swings about the line to the inner end of the other leg, ${placeWords(b)}`,
            },
          ]
        : [];
    }),
  );
}

/** A tie rod lies across the car. */
function sweptTieRods(axle: LooseAxle, places: AxlePlaces): readonly Doubt[] {
  return axle.links.flatMap(({ steered }, i): Doubt[] => {
    const [inner, outer] = [places.get(innerPath(i)), places.get(outerPath(i))];
    if (!steered || !inner || !outer) return [];
    const reach = MOST_SWEPT * Math.abs(outer[1] - inner[1]);
    return Math.abs(outer[0] - inner[0]) <= reach
      ? []
      : [
          {
            paths: [innerPath(i), outerPath(i)],
            needed: `x within ${Math.round(reach)} mm of its outer end's, ${outer[0]}, as a tie rod lies across the car`,
          },
        ];
  });
}

/** A link is hardly longer than its wheel; an upper one reaches the body over the wheel, not the middle of the car. */
function longLinks(axle: LooseAxle, places: AxlePlaces): readonly Doubt[] {
  const radius = axle.wheel?.centre_mm[2];
  if (radius === undefined) return [];
  return axle.links.flatMap(({ name }, i): Doubt[] => {
    const [inner, outer] = [places.get(innerPath(i)), places.get(outerPath(i))];
    if (!inner || !outer) return [];
    const most = (isNamed(name, "upper") ? LONGEST_UPPER : LONGEST) * radius;
    return distanceMm(inner, outer) <= most
      ? []
      : [
          {
            paths: [innerPath(i), outerPath(i)],
            needed: `a link of at most ${Math.round(most)} mm, measured by the height of the wheel centre; this one has ${Math.round(distanceMm(inner, outer))} mm`,
          },
        ];
  });
}

/** What trails is held ahead of what it holds, and lies along the car. */
function trailing(axle: LooseAxle, places: AxlePlaces): readonly Doubt[] {
  const ends = axle.links.flatMap(({ name }, i) =>
    isNamed(name, "trailing") ? [{ held: innerPath(i), holds: places.get(outerPath(i)) }] : [],
  );
  const arm = axle.hasTrailingArm ? [{ held: "trailing_arm.bush_mm", holds: axle.wheel?.centre_mm }] : [];
  return [...ends, ...arm].flatMap(({ held, holds }): Doubt[] => {
    const inner = places.get(held);
    if (!inner || !holds || inner[0] - holds[0] >= Math.abs(inner[1] - holds[1])) return [];
    return [
      {
        paths: [held],
        needed: `a place ahead of what it holds, ${placeWords(holds)}, and no farther across than ahead`,
      },
    ];
  });
}

/** Where the moving end of a spring or damper lies with these places. */
function movingPlace(axle: LooseAxle, places: AxlePlaces, part: "spring" | "damper"): Place | undefined {
  const { seat } = axle[part];
  if (seat?.on !== "link") return places.get(`${part}.seat.moving_mm`);
  const index = axle.links.findIndex(({ name }) => name === seat.link);
  const [inner, outer] = [places.get(innerPath(index)), places.get(outerPath(index))];
  if (!inner || !outer) return undefined;
  const along = (axis: 0 | 1 | 2): number => inner[axis] + seat.fraction * (outer[axis] - inner[axis]);
  return [along(0), along(1), along(2)];
}

/** A strut, a spring or a damper stands: its end on the body above its moving one, and leaning little. */
function leaning(
  part: keyof typeof MOST_LEAN,
  foot: Place | undefined,
  moving: string,
  places: AxlePlaces,
): readonly Doubt[] {
  const body = part === "strut" ? "strut.top_mm" : `${part}.body_mm`;
  const top = places.get(body);
  if (!top || !foot) return [];
  const rise = top[2] - foot[2];
  const lean = Math.max(Math.abs(top[0] - foot[0]), Math.abs(top[1] - foot[1]));
  return lean <= MOST_LEAN[part] * rise
    ? []
    : [
        {
          paths: [body, ...(places.has(moving) ? [moving] : [])],
          needed: `a place above the other end of this ${part}, ${placeWords(rounded(foot))}, leaning at most ${MOST_LEAN[part]} mm per mm of height`,
        },
      ];
}

const rounded = ([x, y, z]: Place): Place => [Math.round(x), Math.round(y), Math.round(z)];
