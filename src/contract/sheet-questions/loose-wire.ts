import { z } from "zod";
import type { RubberFault } from "#casework";
import { metresFromMm, mmFromMetres } from "#quantity";

type Loose = Extract<RubberFault, { kind: "loose" }>;

/** Keys that say how loose a place is: its whole play, mm, and whether nobody has measured it. */
export const looseKeys = { play_mm: z.number().positive(), assumed: z.literal(true).optional() };

interface LooseWire {
  readonly play_mm: number;
  readonly assumed?: true | undefined;
}

/** How loose a place is, as it stands in JSON. */
export const readLoose = ({ play_mm, assumed }: LooseWire): Loose => ({
  kind: "loose",
  play: metresFromMm(play_mm),
  ...(assumed ? { assumed: true } : {}),
});

/** The same as it is sent. */
export const formatLoose = ({ play, assumed }: Loose): { play_mm: number; assumed?: true } => ({
  play_mm: mmFromMetres(play),
  ...(assumed ? { assumed: true } : {}),
});
