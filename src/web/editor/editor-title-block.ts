import type { TitleBlockFacts } from "../shell/title-block.tsx";
import { familyTitleBlock } from "../underside/family-title-block.ts";
import type { Editing } from "./use-editing.ts";

/** The title block of the editor; where nothing can be drawn yet it says only what is edited. */
export const editorTitleBlock = ({ drawn, id }: Editing, title: string, scale: string | null): TitleBlockFacts =>
  drawn === null
    ? { title, note: "not complete yet", rows: [[{ label: "Family", value: id }]] }
    : familyTitleBlock(drawn.family, { title, sheet: "1 of 1", scale });
