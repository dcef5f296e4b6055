import { newtonsPerMetreFromPerMm } from "#quantity";
import type { AxleBodies, AxleBodyPlace, HardPoint, Joint, Origin, TornShare, Wheel } from "#vehicle";
import { readLayout } from "../layout/index.ts";
import type { AxleSheet } from "./axle-schema.ts";
import { type BodiesBlock, bodiesBlock } from "./bodies-block.ts";
import { jointIn } from "./body-members.ts";
import { originWord } from "./figure-schema.ts";
import { type AxleDefaults, readDefaults, readPoint } from "./read-points.ts";

/** The block of an axle sheet that has been checked; null where its layout is one of those with a single knuckle. */
export function blockOf(sheet: Pick<AxleSheet, "layout" | "bodies">): BodiesBlock | null {
  return sheet.layout === "bodies" ? bodiesBlock.parse(sheet.bodies) : null;
}

/** The layout of a block with the wheel of its axle. */
export function readBlockLayout(
  { layout }: BodiesBlock,
  wheel: Pick<Wheel, "centre" | "camber" | "toe" | "loadedRadius">,
) {
  const { on } = layout.wheel;
  const filled = { ...layout, wheel: { on, centre_mm: [0, 1, 0] as [number, number, number], ...NO_ANGLES } };
  const { centre, camber, toe, loadedRadius } = wheel;
  return { ...readLayout(filled, "left"), wheel: { on, centre, camber, toe, loadedRadius } };
}

/** Stands where the axle's own wheel is put in afterwards. */
const NO_ANGLES = { camber_deg: 0, toe_deg: 0, loaded_radius_mm: 1 } as const;

/** A checked block as the program computes with it; `readJoint` reads joints as the rest of the axle has them. */
export function readBodies(
  block: BodiesBlock,
  wheel: Wheel,
  sheet: Pick<AxleSheet, "bodies" | "defaults">,
  readJoint: (sheet: ReturnType<typeof jointIn>, defaults: AxleDefaults) => Joint,
): AxleBodies {
  const defaults = defaultsOf(block, readDefaults(sheet.defaults));
  const place = (part: string, end: AxleBodyPlace["end"]): AxleBodyPlace => ({
    part,
    end,
    joint: readJoint(jointIn(block, part, end), defaults),
  });
  return {
    layout: readBlockLayout(block, wheel),
    points: Object.fromEntries(
      block.layout.points.map(({ name, at_mm }) => [name, readKnown(block, name, at_mm, defaults)]),
    ),
    places: [
      ...block.layout.links.flatMap(({ name }) => [place(name, "from"), place(name, "to")]),
      ...block.layout.joints.map(({ name }) => place(name, null)),
    ],
    members: block.members.map(({ link, n_per_mm }) => ({ link, rate: newtonsPerMetreFromPerMm(n_per_mm) })),
    file: JSON.stringify({ ...(sheet.defaults && { defaults: sheet.defaults }), bodies: sheet.bodies }),
  };
}

function readKnown(
  { known_points }: BodiesBlock,
  name: string,
  at_mm: [number, number, number],
  defaults: AxleDefaults,
): HardPoint {
  const own = known_points.find(({ point }) => point === name);
  return readPoint(
    { at_mm, ...(own?.sd_mm ? { sd_mm: own.sd_mm } : {}), ...(own?.origin ? { origin: own.origin } : {}) },
    defaults,
  );
}

/** What the block says of all its points and rubber, over what the axle says. */
function defaultsOf({ sd_mm, torn_share }: BodiesBlock, axle: AxleDefaults): AxleDefaults {
  return {
    ...axle,
    ...(sd_mm ? { sd: [sd_mm.x / 1000, sd_mm.y / 1000, sd_mm.z / 1000] } : {}),
    ...(torn_share ? { tornShare: { ...axle.tornShare, 3: worstOf(torn_share, axle.rateOrigin) } } : {}),
  };
}

function worstOf({ low, high, origin }: NonNullable<BodiesBlock["torn_share"]>, usual: Origin): TornShare {
  const word = originWord.safeParse(origin);
  return { low, high, origin: word.success ? word.data : usual };
}
