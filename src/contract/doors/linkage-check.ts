import type { Finding } from "#numeric";
import { findNearest } from "../edit-distance.ts";
import { entriesOf, isNumber, isObject, type Loose, type Point, pointOf } from "./loose-corner.ts";
import { checkMixedLengths } from "./mixed-lengths.ts";
import { checkMixedRates } from "./mixed-units.ts";
import { checkArmAxis } from "./trailing-arm-axis.ts";
import { checkVoided } from "./voided-check.ts";

/** Names that already mean another part, or that an object of the answer cannot hold as a key. */
const RESERVED = ["knuckle", "strut_top", "trailing_arm", "__proto__"];

const same = (a: Point, b: Point): boolean => a[0] === b[0] && a[1] === b[1] && a[2] === b[2];
const words = (p: Point): string => `[${p.join(", ")}]`;

/** The names of all links; null where the list or one of the names is missing, so that nothing can be said of a name. */
export function linkNamesOf(doc: Loose): readonly string[] | null {
  if (!Array.isArray(doc.links)) return null;
  const names = doc.links.flatMap((l: unknown) => (isObject(l) && typeof l.name === "string" ? [l.name] : []));
  return names.length === doc.links.length ? names : null;
}

/** An axis shorter than this in every component is no direction: its squares would vanish in the arithmetic. */
const SHORTEST_AXIS = 1e-9;

/** A direction that is all zeros has none. */
export function checkAxis(x: unknown, path: string): Finding[] {
  const p = pointOf(x);
  if (!p || p.some((c) => Math.abs(c) >= SHORTEST_AXIS)) return [];
  return [
    {
      code: "zero-axis",
      path,
      got: words(p),
      needed: "a direction of any length but zero",
      hint: "Give the direction of the bush axis, for example [1, 0, 0] for one that lies fore and aft.",
    },
  ];
}

/** Joint centres nearer to each other than this in every direction are one place (invented; no link is so short). */
const SHORTEST_LINE_MM = 1;

/** Whether two ends of a line are so near that it has no direction one could measure. */
const near = (a: Point, b: Point): boolean => a.every((c, i) => Math.abs(c - (b[i] as number)) < SHORTEST_LINE_MM);

function coincident(path: string, other: string, p: Point): Finding {
  return {
    code: "coincident-points",
    path,
    got: words(p),
    needed: `a point away from ${other}`,
    hint: "Both ends of a joint line stand in one place, so it holds nothing: measure one of them again.",
  };
}

/** Everything about the linkage itself that a schema cannot see: names, coincident points, count of what holds the knuckle. */
export function checkCorner(doc: Loose): Finding[] {
  const findings: Finding[] = [];
  const side = doc.side === "right" ? "right" : "left";
  const links = entriesOf(doc.links);
  const names = new Map<string, number>();
  for (const [i, link] of links) {
    const inner = pointOf(link.inner_mm);
    const outer = pointOf(link.outer_mm);
    if (inner && outer && near(inner, outer))
      findings.push(coincident(`links[${i}].outer_mm`, `links[${i}].inner_mm`, outer));
    if (typeof link.name !== "string") continue;
    const before = names.get(link.name);
    if (before !== undefined)
      findings.push({
        code: "repeated-name",
        path: `links[${i}].name`,
        got: JSON.stringify(link.name),
        needed: "a name of its own",
        hint: `links[${before}] has this name already.`,
      });
    else names.set(link.name, i);
    if (RESERVED.includes(link.name))
      findings.push({
        code: "reserved-name",
        path: `links[${i}].name`,
        got: JSON.stringify(link.name),
        needed: "another name",
        hint: "This word already means something else here.",
      });
  }
  const strut = isObject(doc.strut) ? doc.strut : null;
  const top = pointOf(strut?.top_mm);
  const axisPoint = pointOf(strut?.axis_point_mm);
  if (top && axisPoint && near(top, axisPoint))
    findings.push(coincident("strut.axis_point_mm", "strut.top_mm", axisPoint));
  const arm = isObject(doc.trailing_arm) ? doc.trailing_arm : null;
  if (arm) findings.push(...checkAxis(arm.free_axis, "trailing_arm.free_axis"));
  findings.push(...checkCount(doc, strut, arm));
  const centre = isObject(doc.wheel) ? pointOf(doc.wheel.centre_mm) : null;
  if (centre && (side === "left" ? centre[1] <= 0 : centre[1] >= 0))
    findings.push({
      code: "wrong-side",
      path: "wheel.centre_mm[1]",
      got: String(centre[1]),
      needed: side === "left" ? "a positive y: the left side" : "a negative y: the right side",
      hint: `y is positive to the left. Say "side": "${side === "left" ? "right" : "left"}" or turn the sign of every y.`,
    });
  const lengths = checkMixedLengths(doc);
  const inOtherUnit = new Set(lengths.map(({ path }) => path));
  // Ends a few units apart are not one place where the unit is what is wrong.
  return [...findings.filter((f) => f.code !== "coincident-points" || !inOtherUnit.has(f.path)), ...lengths];
}

/** What the layout holds: one per link, two per strut line, three (two with a free axis) per trailing-arm bush. */
function checkCount(doc: Loose, strut: Loose | null, arm: Loose | null): Finding[] {
  if (!Array.isArray(doc.links)) return [];
  const count = doc.links.length + (strut ? 2 : 0) + (arm ? (arm.free_axis ? 2 : 3) : 0);
  if (count === 5) return [];
  const parts = [`${doc.links.length} ${doc.links.length === 1 ? "link" : "links"}`];
  if (strut) parts.push("a strut line (2)");
  if (arm) parts.push(arm.free_axis ? "a trailing-arm bush with a free axis (2)" : "a trailing-arm bush (3)");
  const off = count - 5;
  const many = `${Math.abs(off)} ${Math.abs(off) === 1 ? "constraint" : "constraints"} too ${off > 0 ? "many" : "few"}`;
  const needed =
    strut && arm
      ? "a strut or a trailing arm, not both"
      : strut
        ? "three links with a strut"
        : arm
          ? `${arm.free_axis ? "three" : "two"} links with this trailing arm`
          : "five links";
  return [
    {
      code: off > 0 ? "constraint-too-many" : "constraint-too-few",
      path: "links",
      got: `${parts.join(" and ")}: ${count} constraints, ${many}`,
      needed: `5 constraints, so that the wheel can travel and do nothing else: ${needed}`,
      hint:
        arm && !arm.free_axis && off === 1
          ? "A bush that slides along its axis takes free_axis and holds one less."
          : off > 0
            ? "A body has six freedoms and travel needs one."
            : "Something that holds the knuckle is not listed.",
    },
  ];
}

/** A spring or damper: which keys go with what it sits on, and whether that is there. */
export function checkSeat(seat: unknown, path: string, doc: Loose): Finding[] {
  if (!isObject(seat)) return [];
  const findings: Finding[] = [];
  const names = linkNamesOf(doc);
  const known = (name: unknown, at: string): boolean => {
    if (typeof name !== "string" || !names || names.includes(name)) return true;
    const nearest = findNearest(name, names);
    findings.push({
      code: "unknown-link",
      path: at,
      got: JSON.stringify(name),
      needed: `the name of a link${at.includes("on[") ? "" : ', two names, or "knuckle"'}`,
      hint: nearest ? `The nearest is "${nearest}".` : `Links here: ${names.join(", ") || "none"}.`,
    });
    return false;
  };
  const has = (key: string): boolean => seat[key] !== undefined;
  const need = (key: string, why: string): void => {
    if (!has(key))
      findings.push({ code: "missing-key", path: `${path}.${key}`, got: "nothing", needed: why, hint: "" });
  };
  const extra = (key: string, why: string): void => {
    if (has(key))
      findings.push({
        code: "key-not-used-here",
        path: `${path}.${key}`,
        got: String(seat[key]),
        needed: "nothing here",
        hint: why,
      });
  };
  if (Array.isArray(seat.on)) {
    const both = seat.on.map((name, i) => known(name, `${path}.on[${i}]`)).every(Boolean);
    if (both && seat.on.length === 2) findings.push(...checkArm(seat.on, path, doc));
    need("moving_mm", "the seat on the arm");
    extra("fraction", "A seat on an arm of two links is given by moving_mm.");
  } else if (seat.on === "knuckle") {
    need("moving_mm", "the seat on the knuckle");
    extra("fraction", "A seat on the knuckle is given by moving_mm.");
  } else if (typeof seat.on === "string" && known(seat.on, `${path}.on`)) {
    if (has("moving_mm") === has("fraction"))
      findings.push({
        code: "one-of-two",
        path: `${path}.${has("fraction") ? "fraction" : "moving_mm"}`,
        got: has("fraction") ? "both moving_mm and fraction" : "neither moving_mm nor fraction",
        needed: "exactly one of moving_mm and fraction",
        hint: "Either says where on the link the seat is.",
      });
  }
  const body = pointOf(seat.body_mm);
  const at = seatAt(seat, doc);
  if (at && body && at.every((c, i) => Math.abs(c - (body[i] as number)) < LEAST_SEAT_LENGTH_MM))
    findings.push(coincident(`${path}.${has("moving_mm") ? "moving_mm" : "fraction"}`, `${path}.body_mm`, at));
  return findings;
}

/** A spring shorter than this has no direction to act in (invented; no seat is measured so well). */
const LEAST_SEAT_LENGTH_MM = 1e-3;

/** Where the seat stands at design: the point given, or on one link the point of its line; null where that is not said. */
function seatAt(seat: Loose, doc: Loose): Point | null {
  const moving = pointOf(seat.moving_mm);
  if (typeof seat.on !== "string" || seat.on === "knuckle") return moving;
  const link = entriesOf(doc.links).find(([, l]) => l.name === seat.on)?.[1];
  const [inner, outer] = [pointOf(link?.inner_mm), pointOf(link?.outer_mm)];
  if (!inner || !outer || same(inner, outer)) return null;
  const line = outer.map((c, i) => c - (inner[i] as number));
  const squared = line.reduce((sum, c) => sum + c * c, 0);
  const along = moving?.reduce((sum, c, i) => sum + (c - (inner[i] as number)) * (line[i] as number), 0);
  const fraction = isNumber(seat.fraction) ? seat.fraction : along === undefined ? null : along / squared;
  if (fraction === null) return null;
  const on = (i: number): number => (inner[i] as number) + fraction * (line[i] as number);
  return [on(0), on(1), on(2)];
}

function checkArm(names: readonly unknown[], path: string, doc: Loose): Finding[] {
  const link = (name: unknown): Loose | undefined => entriesOf(doc.links).find(([, l]) => l.name === name)?.[1];
  const [a, b] = [link(names[0]), link(names[1])];
  if (names[0] === names[1])
    return [
      {
        code: "not-an-arm",
        path: `${path}.on`,
        got: JSON.stringify(names),
        needed: "two different links",
        hint: "For one link give its name alone.",
      },
    ];
  const [oa, ob] = [pointOf(a?.outer_mm), pointOf(b?.outer_mm)];
  const [ia, ib] = [pointOf(a?.inner_mm), pointOf(b?.inner_mm)];
  if (oa && ob && !same(oa, ob))
    return [
      {
        code: "not-an-arm",
        path: `${path}.on`,
        got: `${words(oa)} and ${words(ob)}`,
        needed: "two links with one outer joint",
        hint: "Only then do they make one rigid arm; a spring on one link takes that link's name.",
      },
    ];
  if (ia && ib && same(ia, ib))
    return [
      {
        code: "not-an-arm",
        path: `${path}.on`,
        got: `both inner joints at ${words(ia)}`,
        needed: "two inner joints apart",
        hint: "The arm turns about the line through them.",
      },
    ];
  return [];
}

/** Rubber, members and faults: each speaks of something that is there, once, and with all it needs. */
export function checkElasticity(doc: Loose, path: string, geometry: Loose): Finding[] {
  const findings: Finding[] = [];
  const at = (key: string): string => (path ? `${path}.${key}` : key);
  const linkNames = linkNamesOf(geometry);
  const names = linkNames ?? [];
  const mounts = [
    ...(isObject(geometry.strut) ? ["strut_top"] : []),
    ...(isObject(geometry.trailing_arm) ? ["trailing_arm"] : []),
  ];
  const known = (name: unknown, where: string, among: readonly string[]): void => {
    if (typeof name !== "string" || !linkNames || among.includes(name)) return;
    const nearest = findNearest(name, [...among]);
    findings.push({
      code: "unknown-link",
      path: where,
      got: JSON.stringify(name),
      needed: "the name of a part of this corner",
      hint: nearest ? `The nearest is "${nearest}".` : `Parts here: ${among.join(", ") || "none"}.`,
    });
  };
  findings.push(...checkMixedRates(doc, at));
  const seen = new Set<string>();
  for (const [i, r] of entriesOf(doc.rubber)) {
    const where = at(`rubber[${i}]`);
    known(r.link, `${where}.link`, [...names, ...mounts]);
    const mount = r.link === "strut_top" || r.link === "trailing_arm";
    if (!mount && typeof r.link === "string" && r.end === undefined)
      findings.push({
        code: "missing-key",
        path: `${where}.end`,
        got: "nothing",
        needed: '"inner" or "outer"',
        hint: "",
      });
    if (r.link === "strut_top")
      for (const key of ["axial_n_per_mm", "axis"])
        if (r[key] !== undefined)
          findings.push({
            code: "key-not-used-here",
            path: `${where}.${key}`,
            got: JSON.stringify(r[key]),
            needed: "nothing here",
            hint: "Along the strut line the rod slides freely; that line is the axis.",
          });
    if ((r.axial_n_per_mm === undefined) !== (r.axis === undefined))
      findings.push({
        code: "missing-key",
        path: `${where}.${r.axis === undefined ? "axis" : "axial_n_per_mm"}`,
        got: "nothing",
        needed: "axial_n_per_mm and axis together, or neither",
        hint: "Without an axis the joint is equally stiff in every direction.",
      });
    findings.push(
      ...checkAxis(r.axis, `${where}.axis`),
      ...checkArmAxis(r, where, geometry),
      ...checkVoided(r, where, geometry),
    );
    if (typeof r.link !== "string" || (!mount && r.end === undefined)) continue;
    const key = mount ? r.link : `${r.link}.${String(r.end)}`;
    if (seen.has(key))
      findings.push({
        code: "repeated-name",
        path: where,
        got: key,
        needed: "each end once",
        hint: "Put both rates into one entry.",
      });
    seen.add(key);
  }
  const memberSeen = new Set<unknown>();
  for (const [i, m] of entriesOf(doc.members)) {
    known(m.link, at(`members[${i}].link`), names);
    if (typeof m.link !== "string") continue;
    if (memberSeen.has(m.link))
      findings.push({
        code: "repeated-name",
        path: at(`members[${i}].link`),
        got: JSON.stringify(m.link),
        needed: "each link once",
        hint: "",
      });
    memberSeen.add(m.link);
  }
  const single = doc.fault === undefined ? [] : [["fault", doc.fault] as const];
  const faults = [
    ...single,
    ...(Array.isArray(doc.faults) ? doc.faults.map((f, i) => [`faults[${i}]`, f] as const) : []),
  ];
  for (const [key, fault] of faults) {
    if (!isObject(fault)) continue;
    const where = at(key);
    if (fault.kind === "play" && typeof fault.link === "string" && mounts.includes(fault.link))
      findings.push({
        code: "unknown-link",
        path: `${where}.link`,
        got: JSON.stringify(fault.link),
        needed: "the name of a link",
        hint: "Play is told along a link; a mount can be soft.",
      });
    else known(fault.link, `${where}.link`, fault.kind === "play" ? names : [...names, ...mounts]);
    if (fault.kind !== "soft" || typeof fault.link !== "string") continue;
    const mount = mounts.includes(fault.link);
    const end = fault.end ?? "inner";
    const target = mount ? fault.link : `${fault.link}.${String(end)}`;
    if ((mount || names.includes(fault.link)) && !seen.has(target))
      findings.push({
        code: "nothing-soft",
        path: `${where}.${mount ? "link" : "end"}`,
        got: target,
        needed: "an end that is listed in rubber",
        hint: "An end that is not listed is rigid: there is nothing that could be torn.",
      });
  }
  return findings;
}
