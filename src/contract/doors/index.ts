import type { Door } from "../door.ts";

/** Every calculation that can be asked for, in the order of the list. */
export const doors: readonly Door[] = [];
