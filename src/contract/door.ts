import type { z } from "zod";
import type { Finding } from "#numeric";

export type DoorAnswer = { readonly output: unknown } | { readonly findings: readonly Finding[] };

/** One calculation that can be asked for from the command line or over HTTP with the same JSON. */
export interface Door<Input = unknown> {
  readonly id: string;
  /** One line for the list. */
  readonly summary: string;
  /** Strict objects only: a key nobody reads is refused. */
  readonly input: z.ZodType<Input>;
  readonly output: z.ZodType;
  readonly relation: string;
  readonly source: string;
  readonly accuracy: string;
  /**
   * What no schema can see, read from a document that may still be wrong elsewhere: everything that is wrong is
   * said at once, together with what the schema objects to.
   */
  check?(document: unknown): readonly Finding[];
  /**
   * Called with what the input schema has accepted; refuses by findings, never by throwing.
   * A method, so that doors of different inputs fit one list: each is only ever called with what its own schema gave.
   */
  compute(input: Input): DoorAnswer;
}
