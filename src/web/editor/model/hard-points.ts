import type { AxleName } from "../../car.ts";
import { inWords } from "./field-words.ts";
import type { SheetPath } from "./sheet-path.ts";
import { isKeyed, sheetValueAt } from "./sheet-value.ts";

/** One point of an axle that can be edited and tapped in the drawing. */
export interface PointRow {
  readonly path: SheetPath;
  /** "Trailing link, inner end". */
  readonly name: string;
  /** What it belongs to; points under one heading stand together. */
  readonly part: string;
  /** Which point of it: "inner end". */
  readonly end: string;
  /** Only then it can carry its own origin and standard deviation. */
  readonly isHard: boolean;
}

const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** What a link is called: its label, else its name in words, else its place in the list. */
export const linkLabel = (link: unknown, index: number): string => {
  const { label, name } = isKeyed(link) ? link : {};
  if (typeof label === "string" && label !== "") return label;
  return typeof name === "string" && name !== "" ? sentence(inWords(name)) : `Link ${index + 1}`;
};

/** The links of an axle as they stand in a sheet that may be wrong anywhere. */
export const linksOf = (sheet: unknown, axle: AxleName): readonly unknown[] => {
  const links = sheetValueAt(sheet, [axle, "links"]);
  return Array.isArray(links) ? links : [];
};

/** Every point of an axle in the order a person measures them: wheel, links, strut or arm, spring, damper, bar. */
export const pointRows = (sheet: unknown, axle: AxleName): readonly PointRow[] => {
  const there = (path: SheetPath): boolean => sheetValueAt(sheet, [axle, ...path]) !== undefined;
  const row = (path: SheetPath, part: string, end: string, isHard = true): PointRow => ({
    path: [axle, ...path],
    name: `${part}, ${end}`,
    part,
    end,
    isHard,
  });
  const links = linksOf(sheet, axle).flatMap((link, index) => {
    const part = linkLabel(link, index);
    return [row(["links", index, "inner_mm"], part, "inner end"), row(["links", index, "outer_mm"], part, "outer end")];
  });
  const seated = (["spring", "damper"] as const).flatMap((part) => {
    const name = sentence(part);
    const on = sheetValueAt(sheet, [axle, part, "seat", "on"]);
    return [
      row([part, "body_mm"], name, "end on the body"),
      ...(on === "knuckle" || on === "arm" ? [row([part, "seat", "moving_mm"], name, "moving end")] : []),
    ];
  });
  return [
    row(["wheel", "centre_mm"], "Wheel", "centre", false),
    ...links,
    ...(there(["strut"])
      ? [row(["strut", "top_mm"], "Strut", "top"), row(["strut", "axis_point_mm"], "Strut", "point on its axis")]
      : []),
    ...(there(["trailing_arm"]) ? [row(["trailing_arm", "bush_mm"], "Trailing arm", "front bush")] : []),
    ...(there(["bodies"]) ? [] : seated),
    ...(there(["bar"])
      ? [
          row(["bar", "body_bush_mm"], "Bar", "bush on the body", false),
          row(["bar", "link_upper_mm"], "Bar link", "upper end", false),
          row(["bar", "link_lower_mm"], "Bar link", "lower end", false),
        ]
      : []),
  ];
};

/** Where the coordinates of a point stand: in itself, or under at_mm where it says more. */
export const coordinatesPath = (sheet: unknown, point: SheetPath): SheetPath =>
  isKeyed(sheetValueAt(sheet, point)) ? [...point, "at_mm"] : point;

/** What a point says of itself beside its coordinates; undefined: as the axle's defaults. */
export const ownSaid = (sheet: unknown, point: SheetPath): { readonly sd: unknown; readonly origin: unknown } => {
  const value = sheetValueAt(sheet, point);
  return isKeyed(value) ? { sd: value.sd_mm, origin: value.origin } : { sd: undefined, origin: undefined };
};

/** The point with its own origin or standard deviation, and bare again where it has neither. */
export const withOwnSaid = (value: unknown, said: { readonly sd_mm?: unknown; readonly origin?: unknown }): unknown => {
  const old = isKeyed(value) ? value : { at_mm: value };
  const { at_mm, sd_mm, origin, ...others } = { ...old, ...said } as Record<string, unknown>;
  if (sd_mm === undefined && origin === undefined && Object.keys(others).length === 0) return at_mm;
  return {
    at_mm,
    ...(sd_mm === undefined ? {} : { sd_mm }),
    ...(origin === undefined ? {} : { origin }),
    ...others,
  };
};

/** The point, or the legs of one arm that share it, that end where this one does; they move together. */
export const sharedPoints = (sheet: unknown, point: SheetPath): readonly SheetPath[] => {
  const [axle, list, index, end] = point;
  if (list !== "links" || end !== "outer_mm" || (axle !== "front" && axle !== "rear")) return [point];
  const links = linksOf(sheet, axle);
  const own = links[Number(index)];
  const arm = isKeyed(own) ? own.arm : undefined;
  if (typeof arm !== "string") return [point];
  return links.flatMap((link, at): SheetPath[] =>
    isKeyed(link) && link.arm === arm ? [[axle, "links", at, "outer_mm"]] : [],
  );
};

/** Where a coordinate stands of a point as computations name it ("toe-link.inner", "strut.axis-point"); null: nowhere. */
export const pathOfCoordinate = (sheet: unknown, axle: AxleName, point: string, axis: 0 | 1 | 2): SheetPath | null => {
  const dot = point.lastIndexOf(".");
  const [part, end] = [point.slice(0, dot), `${point.slice(dot + 1).replaceAll("-", "_")}_mm`];
  const link = linksOf(sheet, axle).findIndex((one) => isKeyed(one) && one.name === part);
  const path: SheetPath = link < 0 ? [axle, part.replaceAll("-", "_"), end] : [axle, "links", link, end];
  return sheetValueAt(sheet, path) === undefined ? null : [...coordinatesPath(sheet, path), axis];
};
