import type { JointKind } from "../family.ts";
import type { PositionKind } from "../position.ts";

/** A rigid pivot is looked at like a bush. */
export function positionKind(kind: JointKind): PositionKind {
  return kind === "rigid" ? "bush" : kind;
}

/** What a joint is called in ids. */
export function idWord(kind: JointKind): string {
  return kind === "ball-joint" ? "joint" : "bush";
}

/** What a joint is called in labels. */
export function jointWord(kind: JointKind): string {
  switch (kind) {
    case "ball-joint":
      return "joint";
    case "hydraulic-bush":
      return "hydraulic bush";
    case "bush":
    case "rigid":
      return "bush";
  }
}

/** "lower-rear-link" as it is said: "Lower rear link". */
export function sentenceCase(name: string): string {
  const words = name.replaceAll("-", " ");
  return words.charAt(0).toUpperCase() + words.slice(1);
}
