import type { Finding } from "#numeric";
import { CAR_BODY } from "#vehicle";
import { checkAxis } from "../doors/linkage-check.ts";
import { entriesOf, isObject, type Loose, pointOf } from "../doors/loose-corner.ts";
import { checkLayoutLengths } from "../doors/mixed-lengths.ts";
import { checkNamed, checkRepeated, type NamedEntry, namesOf } from "../doors/named-entries.ts";

type Point = readonly [number, number, number];

const text = (value: unknown, path: string): readonly NamedEntry[] =>
  typeof value === "string" ? [{ name: value, path }] : [];
const texts = (list: unknown, path: string): readonly NamedEntry[] =>
  Array.isArray(list) ? list.flatMap((one, i) => text(one, `${path}[${i}]`)) : [];

/** Where the parts of a layout name bodies and points. */
interface Named {
  readonly bodies: readonly NamedEntry[];
  readonly points: readonly NamedEntry[];
}

function namesInEnd(value: unknown, path: string): Named {
  if (!isObject(value)) return { bodies: [], points: [] };
  return { bodies: text(value.on, `${path}.on`), points: text(value.at, `${path}.at`) };
}

function namesInJoint(joint: Loose, path: string): Named {
  const line = isObject(joint.line) ? joint.line : {};
  const through = namesInEnd(joint.through, `${path}.through`);
  return {
    bodies: [...texts(joint.between, `${path}.between`), ...text(line.on, `${path}.line.on`), ...through.bodies],
    points: [
      ...text(joint.at, `${path}.at`),
      ...texts(joint.axis_through, `${path}.axis_through`),
      ...text(line.from, `${path}.line.from`),
      ...text(line.to, `${path}.line.to`),
      ...through.points,
    ],
  };
}

/**
 * Everything wrong with a layout that no schema can see: names that stand twice or nowhere, parts that join a body with
 * itself, points that coincide, the count of what is held. Reads a document that may be wrong elsewhere too.
 */
export function checkLayout(sheet: unknown, path: string, side: "left" | "right"): Finding[] {
  if (!isObject(sheet)) return [];
  const at = (key: string): string => `${path}.${key}`;
  const bodies = texts(sheet.bodies, at("bodies"));
  const points = namesOf(sheet.points, at("points"), "name");
  const joints = entriesOf(sheet.joints);
  const links = entriesOf(sheet.links);
  const car: NamedEntry = { name: CAR_BODY, path: "" };
  const named = [
    ...joints.map(([i, joint]) => namesInJoint(joint, at(`joints[${i}]`))),
    ...links.flatMap(([i, link]) => endsOf(link, at(`links[${i}]`))),
    ...(["spring", "damper"] as const).flatMap((key) => {
      const strut = sheet[key];
      return isObject(strut) ? endsOf(strut, at(key)) : [];
    }),
  ];
  const carrier = isObject(sheet.wheel) ? text(sheet.wheel.on, at("wheel.on")) : [];
  return [
    ...checkRepeated(bodies),
    ...checkRepeated(points),
    ...checkRepeated([...namesOf(sheet.joints, at("joints"), "name"), ...namesOf(sheet.links, at("links"), "name")]),
    ...bodies.filter(({ name }) => name === CAR_BODY).map(reservedName),
    ...joinedByNothing(bodies, sheet),
    ...checkNamed(carrier, bodies, "body that moves"),
    ...checkNamed(
      named.flatMap((n) => n.bodies),
      [...bodies, car],
      "body",
    ),
    ...checkNamed(
      named.flatMap((n) => n.points),
      points,
      "point",
    ),
    ...joints.flatMap(([i, joint]) => checkJoint(joint, at(`joints[${i}]`), sheet)),
    ...links.flatMap(([i, link]) => checkLink(link, at(`links[${i}]`), sheet)),
    ...(["spring", "damper"] as const).flatMap((key) => {
      const strut = sheet[key];
      return isObject(strut) ? checkEnds(strut, at(key), sheet) : [];
    }),
    ...checkCount(sheet, path),
    ...checkSide(sheet, path, side),
    ...checkLayoutLengths(sheet, at),
  ];
}

const endsOf = (part: Loose, path: string): readonly Named[] => [
  namesInEnd(part.from, `${path}.from`),
  namesInEnd(part.to, `${path}.to`),
];

const reservedName = ({ name, path }: NamedEntry): Finding => ({
  code: "reserved-name",
  path,
  got: JSON.stringify(name),
  needed: "the name of a body that moves",
  hint: "The car body is there without being listed.",
});

/** Bodies that no joint and no link names: nothing could hold them. */
function joinedByNothing(bodies: readonly NamedEntry[], sheet: Loose): Finding[] {
  if (!Array.isArray(sheet.joints ?? []) || !Array.isArray(sheet.links ?? [])) return [];
  const joined = new Set(
    [
      ...entriesOf(sheet.joints).map(([, joint]) => namesInJoint(joint, "")),
      ...entriesOf(sheet.links).flatMap(([, link]) => endsOf(link, "")),
    ].flatMap((named) => named.bodies.map(({ name }) => name)),
  );
  return bodies
    .filter(({ name }) => name !== CAR_BODY && !joined.has(name))
    .map(({ name, path }) => ({
      code: "not-used",
      path,
      got: JSON.stringify(name),
      needed: "a body that joints or links hold",
      hint: "Nothing joins this body: leave it out, or name it where it was meant.",
    }));
}

function placeOf(sheet: Loose, name: unknown): Point | null {
  const found = entriesOf(sheet.points).find(([, p]) => p.name === name)?.[1];
  return found ? pointOf(found.at_mm) : null;
}

/** Two names of points that must lie apart, the second named in the finding. */
function checkApart(sheet: Loose, one: unknown, other: unknown, path: string, why: string): Finding[] {
  const [p, q] = [placeOf(sheet, one), placeOf(sheet, other)];
  if (!p || !q || p.some((c, i) => c !== q[i])) return [];
  return [{ code: "coincident-points", path, got: `[${q.join(", ")}]`, needed: `a point away from ${one}`, hint: why }];
}

function sameBody(path: string, body: unknown): Finding {
  return {
    code: "not-consistent",
    path,
    got: `${JSON.stringify(body)} twice`,
    needed: "two different bodies",
    hint: "A joint or link between a body and itself holds nothing.",
  };
}

function checkEnds(part: Loose, path: string, sheet: Loose): Finding[] {
  const from = isObject(part.from) ? part.from : {};
  const to = isObject(part.to) ? part.to : {};
  return [
    ...(typeof from.on === "string" && from.on === to.on ? [sameBody(`${path}.to.on`, to.on)] : []),
    ...checkApart(sheet, from.at, to.at, `${path}.to.at`, "A length of nought has no direction."),
  ];
}

function checkLink(link: Loose, path: string, sheet: Loose): Finding[] {
  const on = [link.from, link.to].flatMap((end) => (isObject(end) && typeof end.on === "string" ? [end.on] : []));
  const found = checkEnds(link, path, sheet);
  if (link.steered === true && on.length === 2 && !on.includes(CAR_BODY))
    found.push({
      code: "not-consistent",
      path: `${path}.steered`,
      got: "true",
      needed: `a link with one end on "${CAR_BODY}", or false`,
      hint: "The rack moves ends that are on the car body.",
    });
  return found;
}

function checkJoint(joint: Loose, path: string, sheet: Loose): Finding[] {
  if (joint.kind === "slider") {
    const line = isObject(joint.line) ? joint.line : {};
    const through = isObject(joint.through) ? joint.through : {};
    return [
      ...(typeof line.on === "string" && line.on === through.on ? [sameBody(`${path}.through.on`, line.on)] : []),
      ...checkApart(sheet, line.from, line.to, `${path}.line.to`, "A line runs through two points."),
    ];
  }
  const found: Finding[] = [];
  const { between } = joint;
  if (Array.isArray(between) && between.length === 2 && typeof between[0] === "string" && between[0] === between[1])
    found.push(sameBody(`${path}.between[1]`, between[1]));
  if (joint.kind !== "bush") return found;
  if ((joint.axis === undefined) === (joint.axis_through === undefined))
    found.push({
      code: "one-of-two",
      path: `${path}.axis`,
      got: joint.axis === undefined ? "neither axis nor axis_through" : "both axis and axis_through",
      needed: "exactly one of axis and axis_through",
      hint: "Give the direction of the bush, or two points it lies along.",
    });
  if (Array.isArray(joint.axis_through))
    found.push(
      ...checkApart(
        sheet,
        joint.axis_through[0],
        joint.axis_through[1],
        `${path}.axis_through[1]`,
        "An axis runs through two points.",
      ),
    );
  return [...found, ...checkAxis(joint.axis, `${path}.axis`)];
}

/** Six freedoms a body less one must be held: said by how many it is off, and what holds. */
function checkCount(sheet: Loose, path: string): Finding[] {
  if (!Array.isArray(sheet.bodies)) return [];
  const joints = entriesOf(sheet.joints).map(([, j]) => j);
  if (joints.some((j) => !["ball", "bush", "slider"].includes(String(j.kind)))) return [];
  const counts = [
    [joints.filter((j) => j.kind === "ball").length, 3, "ball"],
    [joints.filter((j) => j.kind === "bush" && j.slides !== true).length, 3, "bush"],
    [joints.filter((j) => j.kind === "bush" && j.slides === true).length, 2, "sliding bush"],
    [joints.filter((j) => j.kind === "slider").length, 2, "slider"],
    [entriesOf(sheet.links).length, 1, "link"],
  ] as const;
  const held = counts.reduce((sum, [n, each]) => sum + n * each, 0);
  const needed = 6 * sheet.bodies.length - 1;
  if (held === needed) return [];
  const off = Math.abs(held - needed);
  const parts = counts.flatMap(([n, each, what]) => (n > 0 ? [`${n} x ${what} (${each})`] : []));
  return [
    {
      code: held > needed ? "constraint-too-many" : "constraint-too-few",
      path: `${path}.joints`,
      got: `${parts.join(", ") || "nothing"}: ${held} constraints, ${off} too ${held > needed ? "many" : "few"}`,
      needed: `${needed} constraints: six for each of ${sheet.bodies.length} moving bodies, less one for the travel`,
      hint:
        held > needed
          ? "Of two bushes on one arm only one holds along the axis: give the other slides: true."
          : "Something that holds one of the bodies is not listed.",
    },
  ];
}

function checkSide(sheet: Loose, path: string, side: "left" | "right"): Finding[] {
  const centre = isObject(sheet.wheel) ? pointOf(sheet.wheel.centre_mm) : null;
  if (!centre || (side === "left" ? centre[1] > 0 : centre[1] < 0)) return [];
  return [
    {
      code: "wrong-side",
      path: `${path}.wheel.centre_mm[1]`,
      got: String(centre[1]),
      needed: side === "left" ? "a positive y: the left side" : "a negative y: the right side",
      hint: "y is positive to the left.",
    },
  ];
}
