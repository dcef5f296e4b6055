import type { AxleName } from "../../car.ts";
import type { SheetPath } from "./sheet-path.ts";

/** The parts of the editor: one per axle, the work, the car line as a whole, and the file itself. */
export type PartName = AxleName | "work" | "car" | "file";

export interface Section {
  readonly name: string;
  readonly title: string;
}

const AXLE: readonly Section[] = [
  { name: "points", title: "Hard points" },
  { name: "rubber", title: "Joints" },
  { name: "links", title: "Links" },
  { name: "springs", title: "Springs and bar" },
  { name: "wheel", title: "Wheel and brake" },
  { name: "axle", title: "Axle" },
];

/** Sections of each part, in the order they are used. */
export const SECTIONS: Readonly<Record<PartName, readonly Section[]>> = {
  front: AXLE,
  rear: AXLE,
  work: [
    { name: "limits", title: "Limits" },
    { name: "operations", title: "Operations and torques" },
    { name: "access", title: "Access" },
    { name: "remedies", title: "Remedies" },
    { name: "parts", title: "Parts and prices" },
    { name: "known_faults", title: "Known faults" },
    { name: "alignment", title: "Alignment" },
  ],
  car: [
    { name: "identity", title: "Identity and mass" },
    { name: "variants", title: "Variants" },
    { name: "life", title: "Life" },
  ],
  file: [{ name: "file", title: "Whole file" }],
};

export const PARTS: readonly { readonly name: PartName; readonly title: string }[] = [
  { name: "front", title: "Front axle" },
  { name: "rear", title: "Rear axle" },
  { name: "work", title: "Work" },
  { name: "car", title: "Car line" },
  { name: "file", title: "Whole file" },
];

export const isPart = (name: unknown): name is PartName => PARTS.some((part) => part.name === name);

/** Keys of an axle by the section that shows them; all others stand in "axle". */
const AXLE_KEYS: Readonly<Record<string, readonly string[]>> = {
  springs: ["spring", "damper", "bar"],
  wheel: ["wheel", "brake"],
  links: ["links", "strut", "trailing_arm", "bodies"],
};

/** Keys of an axle that have no form of fields but a section of their own. */
const OWN_SECTION = ["defaults"];

/** Which of the keys of an axle a section made of fields shows. */
export const axleKeysIn = (section: string, keys: readonly string[]): readonly string[] => {
  const own = AXLE_KEYS[section];
  if (own !== undefined) return keys.filter((key) => own.includes(key));
  const others = [...OWN_SECTION, ...Object.values(AXLE_KEYS).flat()];
  return keys.filter((key) => !others.includes(key));
};

const POINT_KEYS = new Set([
  "inner_mm",
  "outer_mm",
  "body_mm",
  "moving_mm",
  "top_mm",
  "axis_point_mm",
  "bush_mm",
  "centre_mm",
  "body_bush_mm",
  "link_upper_mm",
  "link_lower_mm",
]);
const JOINT_KEYS = new Set(["inner_joint", "outer_joint", "top_mount", "bush_joint"]);

/** Keys of an axle's parts that are edited as points and joints, not among the fields of the part. */
export const EDITED_ELSEWHERE: ReadonlySet<string> = new Set([...POINT_KEYS, ...JOINT_KEYS]);

/** Where in the editor a place of the sheet is edited. */
export const placeOf = (path: SheetPath): { readonly part: PartName; readonly section: string } => {
  const [first, second] = path;
  if (first === "front" || first === "rear") return { part: first, section: axleSection(path.slice(1)) };
  if (first === "work") {
    const known = SECTIONS.work.find(({ name }) => name === second);
    return known === undefined ? { part: "file", section: "file" } : { part: "work", section: known.name };
  }
  if (first === "variants" || first === "life") return { part: "car", section: first };
  if (first === undefined || first === "format") return { part: "file", section: "file" };
  return { part: "car", section: "identity" };
};

const axleSection = (path: SheetPath): string => {
  if (path.some((step) => typeof step === "string" && JOINT_KEYS.has(step))) return "rubber";
  if (path.some((step) => typeof step === "string" && POINT_KEYS.has(step))) return "points";
  const [first, second] = path;
  if (first === "defaults") return second === "origin" || second === "sd_mm" ? "points" : "rubber";
  return Object.entries(AXLE_KEYS).find(([, keys]) => keys.includes(String(first)))?.[0] ?? "axle";
};
