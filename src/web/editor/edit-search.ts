import { isPart, type PartName, SECTIONS } from "./model/sections.ts";

/** What of the editor stands in its address. */
export interface EditSearch {
  /** Which part of the sheet is open; absent: the front axle. */
  readonly part?: PartName;
  /** Which section of it; absent: its first. */
  readonly section?: string;
  /** The selected place, as findings write it: front.links[2].inner_mm. */
  readonly at?: string;
}

/** Reads the search part of an address; what cannot be read is left out. */
export const readEditSearch = ({ part, section, at }: Record<string, unknown>): EditSearch => ({
  ...(isPart(part) ? { part } : {}),
  ...(typeof section === "string" && section !== "" ? { section } : {}),
  ...(typeof at === "string" && at !== "" ? { at } : {}),
});

/** The part and section of an address, with what is taken where it names none. */
export const openedOf = ({
  part = "front",
  section,
}: EditSearch): { readonly part: PartName; readonly section: string } => {
  const known = SECTIONS[part];
  const found = known.find(({ name }) => name === section) ?? known[0];
  return { part, section: found?.name ?? "" };
};
