import type { Rung } from "#vehicle";

/** True where nobody has measured the points: they are those of a template. */
export const isTemplate = (rung: Rung): boolean => rung === "layout" || rung === "scaled";

/** Said where readings and a template do not go together, after "if it stays as it is,". */
export const TEMPLATE_MAY_BE_WRONG =
  "it is the template that does not fit this car: see that the layout is the right one, measure its joints (heights over a level plane first), then match again.";
