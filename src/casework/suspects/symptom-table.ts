import type { Symptom } from "./symptom.ts";
import { heardAndFelt } from "./symptoms-heard-and-felt.ts";
import { steeringAndStance } from "./symptoms-steering-and-stance.ts";

/** Every complaint that can be chosen. */
export const symptoms: readonly Symptom[] = [...heardAndFelt, ...steeringAndStance];
