import { Readable, Writable } from "node:stream";
import { runCommandLine } from "../../src/cli/index.ts";

/** How a command ended. */
export interface Ended {
  readonly status: number;
  readonly output: string;
  readonly problems: string;
}

const collect = (): { readonly stream: Writable; readonly text: () => string } => {
  const chunks: Buffer[] = [];
  const stream = new Writable({
    write: (chunk: Buffer, _encoding, done) => {
      chunks.push(Buffer.from(chunk));
      done();
    },
  });
  return { stream, text: () => Buffer.concat(chunks).toString("utf8") };
};

/** Runs one command line on a data folder. */
export const runCommand = async (dataFolder: string, ...words: readonly string[]): Promise<Ended> => {
  const output = collect();
  const problems = collect();
  const status = await runCommandLine(words, {
    terminal: { input: Readable.from([]), output: output.stream, problems: problems.stream },
    serve: () => Promise.resolve(),
    dataFolder,
  });
  return { status, output: output.text(), problems: problems.text() };
};
