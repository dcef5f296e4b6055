import { assumedMark, INVENTED_NOTE } from "#drawing";
import type { Family } from "../car.ts";
import { LAYOUT_WORDS } from "../families/layout-words.ts";
import type { TitleBlockFacts } from "../shell/title-block.tsx";

/** Years of a family in words; "" where none are known. */
export const yearsOf = ({ fromYear, toYear }: Family): string => {
  if (fromYear === undefined) return toYear === undefined ? "" : `to ${toYear}`;
  return toYear === undefined ? `from ${fromYear}` : `${fromYear} to ${toYear}`;
};

const layoutWords = (family: Family): string =>
  [family.front, family.rear]
    .map(({ name, layout }) => `${LAYOUT_WORDS[layout]} ${name}${assumedMark(family, `${name}-layout`)}`)
    .join(", ");

const rungsOf = ({ front, rear }: Family): string =>
  front.rung === rear.rung ? front.rung : `${front.rung}, ${rear.rung}`;

interface SheetFacts {
  readonly title: string;
  /** "2 of 7". */
  readonly sheet: string;
  /** Of the drawing on it; null where there is none or it is not to scale. */
  readonly scale: string | null;
}

const drawnFrom = ({ front, rear }: Family): string => {
  const scaled = [front, rear].filter(({ rung }) => rung === "scaled" || rung === "layout").length;
  if (scaled === 0) return "drawn from this family's data";
  return scaled === 2 ? "scaled from templates" : "one axle scaled from a template";
};

/** The title block of a sheet of a family. */
export const familyTitleBlock = (family: Family, { title, sheet, scale }: SheetFacts): TitleBlockFacts => ({
  title,
  note: family.invented ? INVENTED_NOTE : drawnFrom(family),
  rows: [
    [{ label: "Family", value: [family.name, yearsOf(family)].filter((part) => part !== "").join(", ") }],
    [{ label: "Layout", value: layoutWords(family) }],
    [
      { label: "Rung", value: rungsOf(family) },
      { label: "Units", value: "mm, °, N" },
      ...(scale === null ? [] : [{ label: "Scale", value: scale }]),
      { label: "Sheet", value: sheet },
    ],
  ],
});
