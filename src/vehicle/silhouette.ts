import type { Finding } from "#numeric";
import { type Metres, metresFromMm, mmFromMetres } from "#quantity";
import { type AssumedFigure, type leftOutFigures, templateFigures } from "./assumed.ts";
import type { AxleName, Family, LayoutName, Rung } from "./family.ts";
import { scaleAxle } from "./templates/scale-axle.ts";
import { axleTemplates, templateOf } from "./templates/template-of.ts";
import { parseTyreSize, type TyreSize } from "./tyre-size.ts";

export type DrivenAxle = "front" | "rear" | "both";

/** What a person can tell of a car nobody has measured; everything may be left out. */
export interface SilhouetteEntries {
  readonly name?: string;
  readonly frontLayout?: LayoutName;
  readonly rearLayout?: LayoutName;
  readonly wheelbase?: Metres;
  readonly frontTrack?: Metres;
  readonly rearTrack?: Metres;
  /** As on the sidewall: "205/55 R16". */
  readonly tyreSize?: string;
  readonly kerbMass?: number;
  readonly frontWeightShare?: number;
  readonly drivenAxle?: DrivenAxle;
  /** How much lower the body stands than the maker built it, by other springs or worn ones; negative: raised. */
  readonly frontLowered?: Metres;
  readonly rearLowered?: Metres;
}

/** What is taken where nothing is entered (invented, an ordinary saloon). */
export const silhouetteDefaults = {
  name: "Car line without a name",
  frontLayout: "strut",
  rearLayout: "five-link",
  wheelbase: 2.7,
  frontTrack: 1.55,
  rearTrack: 1.55,
  tyreSize: "205/55 R16",
  kerbMass: 1450,
  frontWeightShare: 0.56,
  drivenAxle: "front",
  frontLowered: 0,
  rearLowered: 0,
} as const satisfies SilhouetteEntries;

/** Range of each figure the templates are good for (invented; every template closes over 80 mm up and down within it). */
export const silhouetteRanges = {
  wheelbase: [1.8, 4.8],
  frontTrack: [1.25, 1.85],
  rearTrack: [1.25, 1.85],
  kerbMass: [500, 4000],
  frontWeightShare: [0.35, 0.7],
  frontLowered: [-0.03, 0.04],
  rearLowered: [-0.03, 0.04],
} as const satisfies Partial<Record<keyof SilhouetteEntries, readonly [number, number]>>;

/** The entry each figure that may be left out comes from. */
const entryOfFigure = {
  "front-layout": "frontLayout",
  "rear-layout": "rearLayout",
  wheelbase: "wheelbase",
  "front-track": "frontTrack",
  "rear-track": "rearTrack",
  "front-tyre-size": "tyreSize",
  "rear-tyre-size": "tyreSize",
  "kerb-mass": "kerbMass",
  "front-weight-share": "frontWeightShare",
  "driven-axle": "drivenAxle",
  "front-height": "frontLowered",
  "rear-height": "rearLowered",
} as const satisfies Record<(typeof leftOutFigures)[number], keyof SilhouetteEntries>;

/** What nobody has entered of a car begun so: the entries left out, and what no silhouette asks for. */
const assumedIn = (entries: SilhouetteEntries): readonly AssumedFigure[] => [
  ...(Object.keys(entryOfFigure) as (keyof typeof entryOfFigure)[]).filter(
    (figure) => entries[entryOfFigure[figure]] === undefined,
  ),
  ...templateFigures,
];

/** Layouts there is a template for. */
export const silhouetteLayouts: Readonly<Record<AxleName, readonly LayoutName[]>> = {
  front: axleTemplates.filter(({ axle }) => axle === "front").map(({ layout }) => layout),
  rear: axleTemplates.filter(({ axle }) => axle === "rear").map(({ layout }) => layout),
};

/** Smallest and largest free radius of a tyre the templates are good for (invented). */
const TYRE_RADIUS: readonly [Metres, Metres] = [0.26, 0.4];
/** How much two tracks may differ. */
const LARGEST_TRACK_DIFFERENCE: Metres = 0.12;
/** Brake force moves forward of the weight by this share, and the height of the mass over the wheelbase: common practice, no source. */
const BRAKE_FORWARD_SHARE = 0.15;
const CG_HEIGHT_SHARE = 0.2;

/**
 * A family of a car nobody has measured: the templates of both layouts, scaled. What was not entered it calls assumed.
 * @param entries what is known; SI
 * @param rung "scaled"; "layout" where not even the measures are to be trusted: nothing may then be computed, only places drawn
 * @returns the family, or a finding per entry that no template fits; `path` is the name of the entry
 */
export function familyFromSilhouette(
  entries: SilhouetteEntries,
  rung: Rung & ("layout" | "scaled") = "scaled",
): { readonly family: Family } | { readonly findings: readonly Finding[] } {
  const known = { ...silhouetteDefaults, ...entries };
  const tyre = parseTyreSize(known.tyreSize);
  const front = templateOf("front", known.frontLayout);
  const rear = templateOf("rear", known.rearLayout);
  const findings = checkSilhouette(entries);
  if (findings.length > 0 || !tyre || !front || !rear) return { findings };

  const { kerbMass, frontWeightShare } = known;
  const shared = { rung, wheelbase: known.wheelbase, tyre, tyreSize: known.tyreSize, kerbMass };
  const frontBrake = rounded(Math.min(0.85, frontWeightShare + BRAKE_FORWARD_SHARE));
  const frontDrive = { front: 1, rear: 0, both: rounded(frontWeightShare) }[known.drivenAxle];
  return {
    family: {
      id: idOf(known.name),
      name: known.name,
      invented: false,
      note: "Scaled from the templates of its layouts; nobody has measured this car.",
      assumed: assumedIn(entries),
      wheelbase: known.wheelbase,
      kerbMass,
      frontWeightShare,
      cgHeight: metresFromMm(Math.round(mmFromMetres(CG_HEIGHT_SHARE * known.wheelbase))),
      front: scaleAxle(front, {
        ...shared,
        track: known.frontTrack,
        bodyRise: -known.frontLowered,
        weightShare: frontWeightShare,
        brakeShare: frontBrake,
        driveShare: frontDrive,
      }),
      rear: scaleAxle(rear, {
        ...shared,
        track: known.rearTrack,
        bodyRise: -known.rearLowered,
        weightShare: 1 - frontWeightShare,
        brakeShare: rounded(1 - frontBrake),
        driveShare: rounded(1 - frontDrive),
      }),
      variants: [],
      life: [],
      work: null,
    },
  };
}

/** Every entry no template fits. */
export function checkSilhouette(entries: SilhouetteEntries): Finding[] {
  const known = { ...silhouetteDefaults, ...entries };
  const tyre = parseTyreSize(known.tyreSize);
  return [
    ...outOfRange(entries),
    ...(["front", "rear"] as const).flatMap((axle) =>
      unknownLayout(axle, axle === "front" ? known.frontLayout : known.rearLayout),
    ),
    ...tyreFindings(known.tyreSize, tyre),
    ...trackFindings(known.frontTrack, known.rearTrack),
  ];
}

function outOfRange(entries: SilhouetteEntries): Finding[] {
  return (Object.keys(silhouetteRanges) as (keyof typeof silhouetteRanges)[]).flatMap((entry) => {
    const value = entries[entry];
    const [low, high] = silhouetteRanges[entry];
    const isLength = entry !== "kerbMass" && entry !== "frontWeightShare";
    const show = (figure: number): string =>
      isLength ? `${Math.round(mmFromMetres(figure) * 10) / 10} mm` : String(figure);
    return value === undefined || (value >= low && value <= high)
      ? []
      : [
          {
            code: "out-of-range",
            path: entry,
            got: show(value),
            needed: `${show(low)} to ${show(high)}`,
            hint: isLength ? "Is it in millimetres?" : "",
          },
        ];
  });
}

function unknownLayout(axle: AxleName, layout: LayoutName): Finding[] {
  return templateOf(axle, layout)
    ? []
    : [
        {
          code: "no-template",
          path: `${axle}Layout`,
          got: layout,
          needed: `one of: ${silhouetteLayouts[axle].join(", ")}`,
          hint: "There is no template of this layout on this axle.",
        },
      ];
}

function tyreFindings(size: string, tyre: TyreSize | null): Finding[] {
  if (!tyre) {
    return [
      {
        code: "tyre-size-unreadable",
        path: "tyreSize",
        got: size,
        needed: "a size such as 205/55 R16",
        hint: "One size, as on the sidewall; where the axles differ, the other is corrected in the data afterwards.",
      },
    ];
  }
  return tyre.freeRadius < TYRE_RADIUS[0] || tyre.freeRadius > TYRE_RADIUS[1]
    ? [
        {
          code: "out-of-range",
          path: "tyreSize",
          got: `${size}, ${Math.round(2000 * tyre.freeRadius)} mm across`,
          needed: `a tyre ${2000 * TYRE_RADIUS[0]} to ${2000 * TYRE_RADIUS[1]} mm across`,
          hint: "",
        },
      ]
    : [];
}

function trackFindings(front: Metres, rear: Metres): Finding[] {
  return Math.abs(front - rear) > LARGEST_TRACK_DIFFERENCE
    ? [
        {
          code: "tracks-too-different",
          path: "rearTrack",
          got: `${Math.round(mmFromMetres(rear))} mm`,
          needed: `within ${mmFromMetres(LARGEST_TRACK_DIFFERENCE)} mm of the front track, ${Math.round(mmFromMetres(front))} mm`,
          hint: "Both are measured between the middles of the tyres.",
        },
      ]
    : [];
}

function rounded(share: number): number {
  return Number(share.toFixed(3));
}

/** Lower-case words joined by hyphens; letters with marks lose them. */
function idOf(name: string): string {
  const plain = name.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();
  const words = plain.match(/[a-z0-9]+/g);
  return words ? words.join("-").slice(0, 60).replace(/-$/, "") : "car-line";
}
