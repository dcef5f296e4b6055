export { type CommandLineParts, runCommandLine } from "./main.ts";
export type { ExitStatus, Terminal } from "./terminal.ts";
