import type { AxleName } from "../../car.ts";
import { inWords } from "./field-words.ts";
import { linkLabel, linksOf } from "./hard-points.ts";
import type { SheetPath } from "./sheet-path.ts";
import { isKeyed, sheetValueAt } from "./sheet-value.ts";
import { formatTyped } from "./typed-number.ts";

/** A place where rubber, a ball or a rigid pivot sits. */
export interface JointRow {
  readonly path: SheetPath;
  readonly name: string;
}

/** Every joint of an axle in the order of its points. */
export const jointRows = (sheet: unknown, axle: AxleName): readonly JointRow[] => {
  const links = linksOf(sheet, axle).flatMap((link, index): JointRow[] => {
    const part = linkLabel(link, index);
    return [
      { path: [axle, "links", index, "inner_joint"], name: `${part}, inner end` },
      { path: [axle, "links", index, "outer_joint"], name: `${part}, outer end` },
    ];
  });
  const mount = (path: SheetPath, name: string): JointRow[] =>
    sheetValueAt(sheet, path.slice(0, -1)) === undefined ? [] : [{ path, name }];
  return [
    ...links,
    ...mount([axle, "strut", "top_mount"], "Strut, top mount"),
    ...mount([axle, "trailing_arm", "bush_joint"], "Trailing arm, front bush"),
  ];
};

/** What sits there and how stiff it is, in one line. */
export const jointSummary = (joint: unknown): string => {
  if (!isKeyed(joint)) return "rigid; nothing on file";
  const { kind, radial_n_per_mm: across, axial_n_per_mm: along, voided_n_per_mm: voided } = joint;
  const rates = [
    across === undefined ? "rigid" : `${formatTyped(across)} across`,
    ...(voided === undefined ? [] : [`${formatTyped(voided)} through voids`]),
    ...(along === undefined ? [] : [`${formatTyped(along)} along, N/mm`]),
  ];
  return [inWords(formatTyped(kind)), ...rates].filter((part) => part !== "").join(", ");
};

const POINT_OF: Readonly<Record<string, string>> = {
  inner_joint: "inner_mm",
  outer_joint: "outer_mm",
  top_mount: "top_mm",
  bush_joint: "bush_mm",
};

/** The hard point a joint sits at; a path that leads to no joint stays as it is. */
export const pointOfJoint = (path: SheetPath): SheetPath => {
  const at = path.findIndex((step) => typeof step === "string" && Object.hasOwn(POINT_OF, step));
  return at < 0 ? path : [...path.slice(0, at), POINT_OF[String(path[at])] ?? ""];
};

/** The joint that sits at a hard point; null where none does. */
export const jointOfPoint = (path: SheetPath): SheetPath | null => {
  const [key] = Object.entries(POINT_OF).find(([, point]) => point === path.at(-1)) ?? [];
  return key === undefined ? null : [...path.slice(0, -1), key];
};
