import { z } from "zod";

/** A corner as it stands in the question of a sheet. */
export const cornerSchema = z.enum(["front-left", "front-right", "rear-left", "rear-right"]);

/** How badly torn. */
export const gradeSchema = z.union([z.literal(1), z.literal(2), z.literal(3)]);
