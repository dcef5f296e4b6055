import { INVENTED_NOTE } from "#drawing";
import type { Family } from "#vehicle";
import type { TitleBlockFacts } from "../shell/title-block.tsx";

/** Years of a family in words; "" where none are known. */
export const yearsOf = ({ fromYear, toYear }: Family): string => {
  if (fromYear === undefined) return toYear === undefined ? "" : `to ${toYear}`;
  return toYear === undefined ? `from ${fromYear}` : `${fromYear} to ${toYear}`;
};

const layoutWords = (family: Family): string =>
  `${family.front.layout.replace("-", " ")}, ${family.rear.layout.replace("-", " ")}`;

const rungsOf = ({ front, rear }: Family): string =>
  front.rung === rear.rung ? front.rung : `${front.rung}, ${rear.rung}`;

/** The title block of a sheet of a family. */
export const familyTitleBlock = (family: Family, title: string, sheet: string): TitleBlockFacts => ({
  title,
  note: family.invented ? INVENTED_NOTE : "drawn from this family's data",
  rows: [
    [{ label: "Family", value: [family.name, yearsOf(family)].filter((part) => part !== "").join(", ") }],
    [{ label: "Layout, front and rear", value: layoutWords(family) }],
    [
      { label: "Rung", value: rungsOf(family) },
      { label: "Units", value: "mm, °, N" },
      { label: "Sheet", value: sheet },
    ],
  ],
});
