import {
  type BodiesFault,
  type BodiesFile,
  endWords,
  isBall,
  partWords,
  type RubberPlace,
  rubberWords,
} from "#casework";
import { metresFromMm } from "#quantity";
import type { BodiesSearch, LookedAtAs } from "./bodies-search.ts";

/** Play nobody has measured, mm, and how many times as firm a firmer part is where nothing is said. */
const ASSUMED_PLAY_MM = 1;
const USUAL_FACTOR = 2;

/** A place of the layout that can be looked at: a joint, a whole link, or one end of it that has rubber. */
export interface LookedAtPlace {
  readonly key: string;
  readonly words: string;
  readonly place: RubberPlace;
  /** Torn and firmer need rubber; loose can be any joint and any whole link. */
  readonly as: readonly LookedAtAs[];
  /** A part of rubber may be told firmer by its hardness; a ball has none. */
  readonly takesHardness: boolean;
}

const keyOf = ({ part, end }: RubberPlace): string => (end === null ? part : `${part}.${end}`);

/** Every place of a layout, joints first, each link whole and then its ends. */
export function placesOf(file: BodiesFile): readonly LookedAtPlace[] {
  const {
    layout,
    isPlain,
    elasticity: { rubber },
  } = file;
  if (isPlain) return [];
  const isRubber = (place: RubberPlace): boolean => hasRubber(place) && !isBall(file, place);
  const hasRubber = (place: RubberPlace): boolean => rubber.some((one) => keyOf(one) === keyOf(place));
  const capital = (said: string): string => `${said.charAt(0).toUpperCase()}${said.slice(1)}`;
  return [
    ...layout.joints.map(({ name }): LookedAtPlace => {
      const place = { part: name, end: null };
      const as: readonly LookedAtAs[] = hasRubber(place) ? ["torn", "loose", "firmer"] : ["loose"];
      return { key: name, words: capital(rubberWords(layout, place)), place, as, takesHardness: isRubber(place) };
    }),
    ...layout.links.flatMap(({ name }): LookedAtPlace[] => [
      {
        key: name,
        words: capital(partWords(layout, name)),
        place: { part: name, end: null },
        as: ["loose"],
        takesHardness: false,
      },
      ...(["from", "to"] as const).flatMap((end) =>
        hasRubber({ part: name, end })
          ? [
              {
                key: `${name}.${end}`,
                words: capital(`${partWords(layout, name)}, ${endWords(layout, name, end)}`),
                place: { part: name, end },
                as: ["torn", "firmer"] as const,
                takesHardness: isRubber({ part: name, end }),
              },
            ]
          : [],
      ),
    ]),
  ];
}

/** The fault an address asks for at a place; what it does not say is as usual. */
export function faultOf({ place, as, takesHardness }: LookedAtPlace, search: BodiesSearch): BodiesFault {
  const [first] = as;
  const kind = search.as !== undefined && as.includes(search.as) ? search.as : first;
  if (kind === "loose")
    return search.play_mm === undefined
      ? { kind, part: place.part, play: metresFromMm(ASSUMED_PLAY_MM), assumed: true }
      : { kind, part: place.part, play: metresFromMm(search.play_mm) };
  if (kind === "firmer" && search.by === "hardness" && takesHardness)
    return { kind, place, hardness: { from: search.old_shore_a ?? null, to: search.new_shore_a ?? null } };
  if (kind === "firmer") {
    const low = search.factor_low ?? USUAL_FACTOR;
    return { kind, place, low, high: Math.max(low, search.factor_high ?? low) };
  }
  return { kind: "torn", place };
}
