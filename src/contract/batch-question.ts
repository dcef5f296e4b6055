import { z } from "zod";

/** One line of a batch: which calculation is asked, and its input. */
export const batchQuestion = z.strictObject({ id: z.string(), input: z.record(z.string(), z.unknown()) });
