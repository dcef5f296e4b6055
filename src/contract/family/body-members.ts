import { CAR_BODY } from "#vehicle";
import type { AxleSheet } from "./axle-schema.ts";
import type { BlockRubber, BodiesBlock } from "./bodies-block.ts";

type LinkSheet = AxleSheet["links"][number];
type JointSheet = NonNullable<LinkSheet["inner_joint"]>;
type Triple = readonly [number, number, number];

/** A member of a linkage of several bodies as it is drawn and renewed: a link, or one leg of a body that is an arm. */
export interface BodyMember {
  readonly sheet: LinkSheet;
  /** What its inner and its outer end are on. */
  readonly between: readonly [inner: string, outer: string];
}

/** A point of the block by its name; the block must have been checked. */
export function placeIn({ layout }: BodiesBlock, name: string): Triple {
  const found = layout.points.find((point) => point.name === name);
  if (!found) throw new Error(`no point named ${name}: the bodies were not checked`);
  return found.at_mm;
}

/** The direction of a joint's axis at design; null where it has none. */
export function axisIn(block: BodiesBlock, name: string): Triple | null {
  const joint = block.layout.joints.find((one) => one.name === name);
  if (joint?.kind === "slider") {
    const [from, to] = [placeIn(block, joint.line.from), placeIn(block, joint.line.to)];
    return [to[0] - from[0], to[1] - from[1], to[2] - from[2]];
  }
  if (joint?.kind !== "bush") return null;
  if (joint.axis) return joint.axis;
  const [from, to] = (joint.axis_through ?? []).map((point) => placeIn(block, point));
  return from && to ? [to[0] - from[0], to[1] - from[1], to[2] - from[2]] : null;
}

/** What sits at an end of a link or at a joint, as a joint of a family sheet. */
export function jointIn(block: BodiesBlock, part: string, end: "from" | "to" | null): JointSheet {
  const entry = block.rubber.find((one) => one.part === part && (one.end ?? null) === end);
  const own = block.layout.joints.find(({ name }) => name === part)?.kind;
  if (!entry) return { kind: own === "bush" || own === "slider" ? "rigid" : "ball-joint" };
  return rubberJoint(entry, own === "ball" ? "ball-joint" : "bush", end === null ? axisIn(block, part) : null);
}

function rubberJoint(entry: BlockRubber, usualKind: "ball-joint" | "bush", axisOfJoint: Triple | null): JointSheet {
  const { part: _part, end: _end, kind, axis, ...rates } = entry;
  const along = axis ?? axisOfJoint;
  return { kind: kind ?? usualKind, ...rates, ...(along ? { axis: [along[0], along[1], along[2]] } : {}) };
}

/** Every link, and every body that does not carry the wheel as legs to its outermost joint. */
export function membersOf(block: BodiesBlock): readonly BodyMember[] {
  return [...block.layout.links.map((link) => linkMember(block, link)), ...armMembers(block)];
}

function linkMember(block: BodiesBlock, link: BodiesBlock["layout"]["links"][number]): BodyMember {
  const { name, label, from, to, steered } = link;
  return {
    sheet: {
      name,
      ...(label === undefined ? {} : { label }),
      inner_mm: point(block, from.at),
      outer_mm: point(block, to.at),
      ...(steered ? { steered } : {}),
      inner_joint: jointIn(block, name, "from"),
      outer_joint: jointIn(block, name, "to"),
    },
    between: [from.on, to.on],
  };
}

const point = (block: BodiesBlock, name: string): [number, number, number] => {
  const [x, y, z] = placeIn(block, name);
  return [x, y, z];
};

/** A joint or the end of a link that sits on a body. */
interface OnBody {
  readonly name: string;
  readonly at: string;
  readonly other: string;
  readonly joint: JointSheet;
}

function placesOn(block: BodiesBlock, body: string): readonly OnBody[] {
  const { joints, links } = block.layout;
  return [
    ...joints.flatMap((joint): OnBody[] => {
      const own = jointIn(block, joint.name, null);
      if (joint.kind === "slider") {
        const { line, through } = joint;
        if (line.on === body) return [{ name: joint.name, at: line.from, other: through.on, joint: own }];
        return through.on === body ? [{ name: joint.name, at: through.at, other: line.on, joint: own }] : [];
      }
      const { name, at, between } = joint;
      const other = between[0] === body ? between[1] : between[0];
      return between.includes(body) ? [{ name, at, other, joint: own }] : [];
    }),
    ...links.flatMap(({ name, from, to }): OnBody[] =>
      [from, to]
        .filter(({ on }) => on === body)
        .map(({ at }) => ({ name, at, other: from.on === body ? to.on : from.on, joint: { kind: "rigid" } })),
    ),
  ];
}

/** An arm reaches to its outermost joint: every other place on it is the inner end of a leg. */
function armMembers(block: BodiesBlock): readonly BodyMember[] {
  const { bodies, wheel } = block.layout;
  return bodies
    .filter((body) => body !== wheel.on)
    .flatMap((body) => {
      const places = placesOn(block, body);
      const outer = places.reduce<OnBody | null>(
        (most, one) => (most && placeIn(block, most.at)[1] >= placeIn(block, one.at)[1] ? most : one),
        null,
      );
      if (outer === null) return [];
      const end = placeIn(block, outer.at).join();
      const inner = places.filter(({ at }) => placeIn(block, at).join() !== end);
      return inner.map(
        ({ name, at, joint }): BodyMember => ({
          sheet: {
            name: `${body}-${name}`.slice(0, LONGEST_NAME),
            inner_mm: point(block, at),
            outer_mm: point(block, outer.at),
            inner_joint: joint,
            outer_joint: outer.joint,
            arm: body,
          },
          between: [body, body],
        }),
      );
    });
}

/** Names of a family sheet are no longer. */
const LONGEST_NAME = 60;

/** The end of a spring or damper on the car body, and the moving one with what carries it. */
export function strutEnds(
  block: BodiesBlock,
  which: "spring" | "damper",
): { readonly body: [number, number, number]; readonly moving: [number, number, number]; readonly on: string } {
  const strut = block.layout[which];
  if (!strut) throw new Error(`no ${which}: the bodies were not checked`);
  const [still, moving] = strut.to.on === CAR_BODY ? [strut.to, strut.from] : [strut.from, strut.to];
  return { body: point(block, still.at), moving: point(block, moving.at), on: moving.on };
}

/** What the keys of one knuckle would say of this axle, for the drawing, the work and the schema of a whole sheet. */
export function drawnKeys(block: BodiesBlock): Pick<AxleSheet, "links" | "spring" | "damper"> {
  const ends = (which: "spring" | "damper") => {
    const { body, moving } = strutEnds(block, which);
    return { body_mm: body, seat: { on: "knuckle" as const, moving_mm: moving } };
  };
  return {
    links: membersOf(block).map(({ sheet }) => sheet),
    spring: { ...ends("spring"), rate_n_per_mm: block.spring_n_per_mm },
    damper: ends("damper"),
  };
}
