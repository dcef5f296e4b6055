import type { Finding } from "#numeric";
import { type Metres, metresFromMm, mmFromMetres } from "#quantity";
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
  /** From the middle of the hub up to the edge of the arch, standing. */
  readonly frontHubToArch?: Metres;
  readonly rearHubToArch?: Metres;
}

/** What is taken where nothing is entered (invented, an ordinary saloon); hub to arch: see usualHubToArch. */
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
} as const satisfies SilhouetteEntries;

/** Range of each figure the templates are good for (invented; every template closes over 80 mm up and down within it). */
export const silhouetteRanges = {
  wheelbase: [2.2, 3.4],
  frontTrack: [1.3, 1.75],
  rearTrack: [1.3, 1.75],
  kerbMass: [600, 3000],
  frontWeightShare: [0.35, 0.7],
  frontHubToArch: [0.28, 0.48],
  rearHubToArch: [0.28, 0.48],
} as const satisfies Partial<Record<keyof SilhouetteEntries, readonly [number, number]>>;

/** Layouts there is a template for. */
export const silhouetteLayouts: Readonly<Record<AxleName, readonly LayoutName[]>> = {
  front: axleTemplates.filter(({ axle }) => axle === "front").map(({ layout }) => layout),
  rear: axleTemplates.filter(({ axle }) => axle === "rear").map(({ layout }) => layout),
};

/** Smallest and largest free radius of a tyre the templates are good for (invented). */
const TYRE_RADIUS: readonly [Metres, Metres] = [0.26, 0.4];
/** Gap between the tyre and the arch of an ordinary car (invented), and how far a body may stand from the usual height. */
const USUAL_ARCH_GAP: Metres = 0.055;
const LARGEST_BODY_RISE: Metres = 0.05;
/** How much two tracks may differ. */
const LARGEST_TRACK_DIFFERENCE: Metres = 0.12;
/** Brake force moves forward of the weight by this share, and the height of the mass over the wheelbase: common practice, no source. */
const BRAKE_FORWARD_SHARE = 0.15;
const CG_HEIGHT_SHARE = 0.2;

/** Distance from hub to arch an ordinary car has on this tyre. */
export function usualHubToArch(tyre: TyreSize): Metres {
  return metresFromMm(Math.round(mmFromMetres(tyre.freeRadius + USUAL_ARCH_GAP)));
}

/**
 * A family of a car nobody has measured: the templates of both layouts, scaled.
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
  const usual = usualHubToArch(tyre);
  const shared = { rung, wheelbase: known.wheelbase, tyre, tyreSize: known.tyreSize, kerbMass };
  const frontBrake = rounded(Math.min(0.85, frontWeightShare + BRAKE_FORWARD_SHARE));
  const frontDrive = { front: 1, rear: 0, both: rounded(frontWeightShare) }[known.drivenAxle];
  return {
    family: {
      id: idOf(known.name),
      name: known.name,
      invented: false,
      note: "Scaled from the templates of its layouts; nobody has measured this car.",
      wheelbase: known.wheelbase,
      kerbMass,
      frontWeightShare,
      cgHeight: metresFromMm(Math.round(mmFromMetres(CG_HEIGHT_SHARE * known.wheelbase))),
      front: scaleAxle(front, {
        ...shared,
        track: known.frontTrack,
        bodyRise: bodyRise(entries.frontHubToArch, usual),
        weightShare: frontWeightShare,
        brakeShare: frontBrake,
        driveShare: frontDrive,
      }),
      rear: scaleAxle(rear, {
        ...shared,
        track: known.rearTrack,
        bodyRise: bodyRise(entries.rearHubToArch, usual),
        weightShare: 1 - frontWeightShare,
        brakeShare: rounded(1 - frontBrake),
        driveShare: rounded(1 - frontDrive),
      }),
      variants: [],
      life: [],
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
    ...(tyre ? archFindings(entries, tyre) : []),
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
        hint: "It stands on the sidewall.",
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

function archFindings(entries: SilhouetteEntries, tyre: TyreSize): Finding[] {
  const usual = usualHubToArch(tyre);
  return (["frontHubToArch", "rearHubToArch"] as const).flatMap((entry) => {
    const value = entries[entry];
    if (value === undefined || Math.abs(value - usual) <= LARGEST_BODY_RISE) return [];
    const [low, high] = [usual - LARGEST_BODY_RISE, usual + LARGEST_BODY_RISE].map((limit) =>
      Math.round(mmFromMetres(limit)),
    );
    const [least, most] = silhouetteRanges[entry];
    if (value < least || value > most) return [];
    return [
      {
        code: "hub-to-arch-against-tyre",
        path: entry,
        got: `${Math.round(mmFromMetres(value))} mm`,
        needed: `${low} to ${high} mm on this tyre`,
        hint: "From the middle of the hub straight up to the edge of the arch; check the tyre size too.",
      },
    ];
  });
}

function bodyRise(hubToArch: Metres | undefined, usual: Metres): Metres {
  return hubToArch === undefined ? 0 : hubToArch - usual;
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
