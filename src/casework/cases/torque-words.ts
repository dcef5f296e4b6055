import type { FastenerUse } from "#vehicle";
import { formatNumber } from "../fault/format-figure.ts";
import { ownerWords } from "./reading-reasons.ts";

const DEGREES = 180 / Math.PI;

/** Torque and stages of a fastener with whose figure it is: "100 N·m, then 90°, by its maker"; or "not on file". */
export function torqueWords({ stages, owner }: Pick<FastenerUse, "stages" | "owner">): string {
  if (stages === null || stages.length === 0) return "torque not on file";
  const parts = stages.map((stage) =>
    "torque" in stage ? `${formatNumber(stage.torque, 0)} N·m` : `${formatNumber(stage.angle * DEGREES, 0)}°`,
  );
  return `${parts.join(", then ")}, ${ownerWords[owner]}`;
}

const policyWords: Readonly<Record<FastenerUse["policy"], string>> = {
  "always-new": "always new",
  "if-seized": "new if seized",
  reuse: "used again",
};

/** What goes with a fastener: new or not, locker, grease. */
export const fastenerWords = ({ policy, locker, grease }: FastenerUse): string =>
  [
    policyWords[policy],
    locker === "none" ? "" : locker === "tube" ? "with thread locker" : "locker already on it",
    grease ? "greased" : "",
  ]
    .filter((part) => part !== "")
    .join(", ");
