import { buildLayoutLinkage, LayoutBalance, LayoutSweep } from "#engines/linkage";
import type { Finding } from "#numeric";
import { metresFromMm, mmFromMetres, radiansFromDegrees } from "#quantity";
import { checkBodiesRubber } from "../doors/bodies-rubber-check.ts";
import { findLayoutDependence } from "../doors/linkage-bodies.ts";
import { checkLayout } from "../layout/index.ts";
import { parseWire } from "../refusal.ts";
import { type BodiesBlock, bodiesBlock } from "./bodies-block.ts";
import { drawnKeys } from "./body-members.ts";
import { familyFinding } from "./family-finding.ts";
import { hyphenName } from "./figure-schema.ts";
import { asObject, type LooseAxle } from "./loose-axle.ts";
import { readBlockLayout } from "./read-bodies.ts";

/** How far what a block says of the wheel or of the car line may miss what the axle says: rounding. */
const SAME = { mm: 0.05, deg: 0.005, share: 0.01 } as const;

/** Keys of an axle with one knuckle, which the bodies stand in place of. */
const ONE_KNUCKLE = ["links", "strut", "trailing_arm", "spring", "damper", "correlation"] as const;

/** Whether an axle sheet says that its linkage is one of several bodies. */
export const saysBodies = (axle: Pick<LooseAxle, "raw">): boolean => axle.raw.layout === "bodies";

/**
 * An axle sheet with what the keys of one knuckle would say of its bodies, as the schema of a whole sheet needs them; the
 * same sheet where it has no bodies or nothing can be made of them, which checkBodies says.
 */
export function withDrawnKeys(sheet: unknown): unknown {
  const raw = asObject(sheet);
  if (raw.layout !== "bodies") return sheet;
  const { links: _links, spring: _spring, damper: _damper, ...rest } = raw;
  const block = soundBlock(raw.bodies);
  return { ...rest, ...(block ? drawnKeys(block) : NOTHING_DRAWN) };
}

/** Stands where nothing can be drawn of a block with mistakes, so that the schema is silent on keys nobody gives. */
const NOTHING_DRAWN = {
  links: [{ name: "none", inner_mm: [0, 1, 0], outer_mm: [0, 2, 0] }],
  spring: { body_mm: [0, 1, 1], seat: { on: "knuckle", moving_mm: [0, 1, 0] }, rate_n_per_mm: 1 },
  damper: { body_mm: [0, 1, 1], seat: { on: "knuckle", moving_mm: [0, 1, 0] } },
};

/** A block nothing is wrong with by itself; null else. */
function soundBlock(value: unknown): BodiesBlock | null {
  const parsed = bodiesBlock.safeParse(value);
  return parsed.success && checkBlock(value).length === 0 ? parsed.data : null;
}

/** What no schema sees in a block by itself; paths inside it. */
function checkBlock(value: unknown): readonly Finding[] {
  const raw = asObject(value);
  const layout = asObject(raw.layout);
  const points = Array.isArray(layout.points) ? layout.points.map((one) => asObject(one).name) : [];
  const known = Array.isArray(raw.known_points) ? raw.known_points : [];
  return [
    ...checkLayout(raw.layout, "layout", "left"),
    ...checkBodiesRubber({ ...raw, faults: [] }),
    ...names(layout),
    ...(raw.layout !== undefined && layout.damper === undefined
      ? [
          familyFinding(
            "part-missing-in-layout",
            "layout.damper",
            "nothing",
            "the damper, from one body to another",
            "Without one nothing is known of its place.",
          ),
        ]
      : []),
    ...known.flatMap((one: unknown, i): Finding[] => {
      const { point } = asObject(one);
      return typeof point === "string" && !points.includes(point)
        ? [
            {
              code: "unknown-name",
              path: `known_points[${i}].point`,
              got: JSON.stringify(point),
              needed: "a point of the layout",
              hint: `There are: ${points.join(", ")}.`,
            },
          ]
        : [];
    }),
  ];
}

/** Parts and bodies are named as places on a car are: lower-case words joined by hyphens, each name once. */
function names(layout: Readonly<Record<string, unknown>>): Finding[] {
  const seen = new Set<string>();
  const named = (["bodies", "joints", "links"] as const).flatMap((key) => {
    const list: unknown[] = Array.isArray(layout[key]) ? layout[key] : [];
    return list.map((one, i) => ({
      name: key === "bodies" ? one : asObject(one).name,
      path: `layout.${key}[${i}]${key === "bodies" ? "" : ".name"}`,
      key,
    }));
  });
  return named.flatMap(({ name, path, key }): Finding[] => {
    if (typeof name !== "string") return [];
    if (!hyphenName.safeParse(name).success)
      return [
        familyFinding(
          "bodies-name",
          path,
          name,
          "lower-case words joined by hyphens, such as carrier-arm",
          "Places of a car line are named by it.",
        ),
      ];
    const twice = seen.has(name) && key !== "bodies" && named.some((one) => one.key === "bodies" && one.name === name);
    seen.add(name);
    return twice
      ? [familyFinding("duplicate-link-name", path, name, "a name no body has", "Places are told apart by it.")]
      : [];
  });
}

/** Everything wrong with the bodies of an axle (`wheelLoad`: at one wheel by the car line, N), paths from the family sheet; nothing of an axle without any. */
export function checkBodies(axle: LooseAxle, wheelLoad: number | null): readonly Finding[] {
  const { name, raw } = axle;
  const at = `${name}.bodies`;
  if (!saysBodies(axle))
    return raw.bodies === undefined
      ? []
      : [
          familyFinding(
            "part-not-in-layout",
            at,
            "bodies",
            `no bodies where the layout is ${String(raw.layout)}`,
            'Name the layout "bodies", or leave them out.',
          ),
        ];
  const misplaced = ONE_KNUCKLE.filter((key) => key in axle.given).map((key) =>
    familyFinding(
      "part-not-in-layout",
      `${name}.${key}`,
      key,
      `no ${key} where the layout is bodies`,
      "It stands in the bodies.",
    ),
  );
  if (raw.bodies === undefined)
    return [
      ...misplaced,
      familyFinding(
        "part-missing-in-layout",
        at,
        "nothing",
        "the bodies and joints the layout is named after",
        "See docs/family-sheet.md, or name another layout.",
      ),
    ];
  const parsed = parseWire(bodiesBlock, raw.bodies, checkBlock(raw.bodies));
  if ("findings" in parsed)
    return [
      ...misplaced,
      ...parsed.findings.map((one) => ({ ...one, path: one.path === "" ? at : `${at}.${one.path}` })),
    ];
  return [
    ...misplaced,
    ...checkRung(axle),
    ...checkAgreement(axle, parsed.value, wheelLoad),
    ...checkMotion(axle, parsed.value),
  ];
}

/** No template has such a linkage: somebody has taken its points. */
function checkRung({ name, raw }: LooseAxle): Finding[] {
  return raw.rung === "layout" || raw.rung === "scaled"
    ? [
        familyFinding(
          "no-template",
          `${name}.rung`,
          raw.rung,
          "measured or matched",
          "There is no template of a layout of bodies: its points are known or it cannot be computed.",
        ),
      ]
    : [];
}

/** What the block says beside the axle and the car line must be what those say. */
function checkAgreement({ name, wheel, raw }: LooseAxle, block: BodiesBlock, wheelLoad: number | null): Finding[] {
  const own = block.layout.wheel;
  const at = `${name}.bodies`;
  const differs = (path: string, got: number, needed: number, within: number, of: string): Finding[] =>
    Math.abs(got - needed) <= within
      ? []
      : [
          familyFinding(
            "bodies-against-axle",
            `${at}.${path}`,
            got,
            `${needed}, as ${of} says, or nothing`,
            "What the car line says itself may be left out here.",
          ),
        ];
  const centre = own.centre_mm?.flatMap((c, i) =>
    wheel
      ? differs(`layout.wheel.centre_mm[${i}]`, c, wheel.centre_mm[i] as number, SAME.mm, `${name}.wheel.centre_mm`)
      : [],
  );
  const angle = (key: "camber_deg" | "toe_deg"): Finding[] =>
    own[key] !== undefined && wheel
      ? differs(`layout.wheel.${key}`, own[key], wheel[key], SAME.deg, `${name}.wheel.${key}`)
      : [];
  const share = (key: "unsprung_kg" | "droop_stop_mm", of: string): Finding[] => {
    const [got, needed] = [block[key], raw[of]];
    return got !== undefined && typeof needed === "number"
      ? differs(key, got, needed, SAME.share * needed, `${name}.${of}`)
      : [];
  };
  return [
    ...(centre ?? []),
    ...angle("camber_deg"),
    ...angle("toe_deg"),
    ...(block.wheel_load_n !== undefined && wheelLoad !== null
      ? differs("wheel_load_n", block.wheel_load_n, wheelLoad, SAME.share * wheelLoad, "half its mass on this axle")
      : []),
    ...share("unsprung_kg", "unsprung_mass_kg"),
    ...share("droop_stop_mm", "droop_stop_mm"),
  ];
}

/** Whether the bodies move as a wheel does: nothing held twice, the spring carries, the stops lie within the branch. */
function checkMotion(axle: LooseAxle, block: BodiesBlock): Finding[] {
  const { name, wheel, raw } = axle;
  if (!wheel) return [];
  const layout = readBlockLayout(block, {
    centre: wheel.centre_mm.map(metresFromMm) as [number, number, number],
    camber: radiansFromDegrees(wheel.camber_deg),
    toe: radiansFromDegrees(wheel.toe_deg),
    loadedRadius: metresFromMm(wheel.loaded_radius_mm ?? wheel.centre_mm[2]),
  });
  const at = `${name}.bodies`;
  const linkage = buildLayoutLinkage(layout);
  const dependent = findLayoutDependence({ linkage });
  if (dependent) return [{ ...dependent, path: `${at}.${dependent.path}` }];
  const steered = name === "rear" || layout.links.some((link) => link.steered);
  const balance = new LayoutBalance(
    linkage,
    { springRate: 1, rubber: [], members: [], wheelLoad: 1 },
    "wheel-load",
    [],
  );
  const ends = new LayoutSweep(layout).findEnds(FURTHEST);
  return [
    ...(steered
      ? []
      : [
          familyFinding(
            "no-steered-link",
            `${at}.layout.links`,
            "no link with steered: true",
            "one steered link",
            "Say steered: true in the tie rod.",
          ),
        ]),
    ...(balance.carries
      ? []
      : [
          {
            code: "cannot-carry",
            path: `${at}.layout.spring`,
            got: "a spring that does not carry the wheel",
            needed: "a spring whose length changes when the wheel rises",
            hint: "Look at the spring's points.",
          },
        ]),
    ...(raw.points_confirmed === true
      ? []
      : (
          [
            ["bump_stop_mm", "high", "rises"],
            ["droop_stop_mm", "low", "falls"],
          ] as const
        ).flatMap(([key, end, way]) => {
          const [fold, stop] = [ends[end], raw[key]];
          if (fold === null || typeof stop !== "number" || Math.abs(fold.at) >= metresFromMm(stop)) return [];
          const most = Math.floor(mmFromMetres(Math.abs(fold.at)));
          return [
            familyFinding(
              "stop-beyond-fold",
              `${name}.${key}`,
              stop,
              `at most ${most}, in millimetres: there this linkage folds as the wheel ${way}`,
              `It locks in ${fold.joints.map(({ joint }) => joint).join(", ")}. Check the stop; if it is right, check the hard points of these parts.`,
            ),
          ];
        })),
  ];
}

/** No wheel of a car travels further to either side (invented bound of the schema). */
const FURTHEST = 0.4;
