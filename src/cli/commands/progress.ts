import type { Writable } from "node:stream";

/** Hears how far long work has come. */
export type Told = (what: string, done: number, of: number | null) => void;

/** Short work says nothing; long work says where it is, but not more than once in this time. */
const betweenLinesMs = 1000;

/** Says on a stream how far work has come; `now` is a clock in milliseconds. */
export const sayProgress = (to: Writable, now: () => number): Told => {
  let last = now();
  return (what, done, of) => {
    if (now() - last < betweenLinesMs) return;
    last = now();
    to.write(of === null ? `${what}: ${done}\n` : `${what}: ${done} of ${of}\n`);
  };
};
