import { findNearest } from "#contract";

/** A page somebody may have meant. */
export interface MeantPage {
  readonly path: string;
  readonly name: string;
}

const PAGES: readonly MeantPage[] = [
  { path: "/", name: "Today" },
  { path: "/families", name: "Families" },
  { path: "/families/begin", name: "Begin a car line" },
  { path: "/counter", name: "Counter" },
  { path: "/bench", name: "Bench" },
  { path: "/tally", name: "Tally" },
  { path: "/reference", name: "Reference" },
];

const IN_FAMILY = [
  { part: "underside", name: "Underside" },
  { part: "geometry", name: "Geometry" },
] as const;

const IN_CASE = [
  { part: "enquiry", name: "Enquiry" },
  { part: "car", name: "Car" },
  { part: "readings", name: "Readings" },
  { part: "underside", name: "Underside" },
  { part: "findings", name: "Findings" },
  { part: "options", name: "Options" },
  { part: "plan", name: "Plan" },
  { part: "job-card", name: "Job card" },
  { part: "hand-over", name: "Hand-over" },
] as const;

const inside = (
  base: string,
  whole: string,
  pages: readonly { readonly part: string; readonly name: string }[],
  asked: string | undefined,
): MeantPage => {
  const nearest =
    asked === undefined
      ? null
      : findNearest(
          asked,
          pages.map(({ part }) => part),
        );
  const page = pages.find(({ part }) => part === nearest);
  return page === undefined
    ? { path: base, name: whole }
    : { path: `${base}/${page.part}`, name: `${page.name} of ${whole}` };
};

/** The page an address that leads nowhere probably meant; null where none is near. */
export const nearestPage = (path: string): MeantPage | null => {
  const [first, second, third] = path.split("/").filter((part) => part !== "");
  if (first === undefined) return null;
  const head = findNearest(first, ["families", "cases", "counter", "bench", "tally", "reference"]);
  if (head === "families" && second !== undefined && second !== "begin")
    return inside(`/families/${second}`, "the car line", IN_FAMILY, third);
  if (head === "cases" && second !== undefined) return inside(`/cases/${second}`, "the visit", IN_CASE, third);
  return PAGES.find((page) => page.path === `/${head}${second === "begin" ? "/begin" : ""}`) ?? null;
};
