import { once } from "node:events";
import type { Readable, Writable } from "node:stream";

/** Where a command reads and writes; the process's own streams, or a test's. */
export interface Terminal {
  readonly input: Readable;
  readonly output: Writable;
  readonly problems: Writable;
}

/** What a command ends with: 0 done, 1 a fault of ours, 2 the input was refused. */
export type ExitStatus = 0 | 1 | 2;

/** Writes one line and waits where the reader is slower than we are. */
export const writeLine = async (to: Writable, line: string): Promise<void> => {
  if (!to.write(`${line}\n`)) await once(to, "drain");
};
