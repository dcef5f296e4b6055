import type { Grade } from "./family.ts";

/** Grade words of screen and paper, by grade; never a code. */
export const gradeWords: Readonly<Record<Grade, string>> = {
  0: "Sound",
  1: "Watch",
  2: "Plan",
  3: "Repair first",
  4: "Do not drive",
};
