import type { Finding } from "#contract";

const ASKED_ABOUT: readonly string[] = ["reading-implausible", "odometer-jump", "odometer-miles"];

/** Whether somebody may say that an entry stands: everything that is odd about it is unlikely, and nothing impossible. */
export const canBeConfirmed = (findings: readonly Finding[]): boolean =>
  findings.length > 0 && findings.every(({ code }) => ASKED_ABOUT.includes(code));
