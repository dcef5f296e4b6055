import loadHighs from "highs";
import { type Door, doorsWith, highsSolver } from "#contract";

/** Every calculation, those with a mixed-integer solver included: HiGHS is loaded once per process. */
export const loadDoors = async (): Promise<readonly Door[]> => doorsWith(highsSolver(await loadHighs()));
