import type { Finding } from "#numeric";
import type { z } from "zod";

export type DoorAnswer = { readonly output: unknown } | { readonly findings: readonly Finding[] };

/** One calculation that can be asked for from the command line or over HTTP with the same JSON. */
export interface Door<Input = unknown> {
  readonly id: string;
  /** One line for the list. */
  readonly summary: string;
  readonly input: z.ZodType<Input>;
  readonly output: z.ZodType;
  readonly relation: string;
  readonly source: string;
  readonly accuracy: string;
  /** Called with what the input schema has accepted; refuses by findings, never by throwing. */
  readonly compute: (input: Input) => DoorAnswer;
}
