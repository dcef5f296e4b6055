import type { SymptomEntry } from "#casework";
import type { Corner } from "../../car.ts";

export type Where = Pick<SymptomEntry, "side" | "axle">;

const CORNERS: readonly Corner[] = ["front-left", "front-right", "rear-left", "rear-right"];

/** The wheels a complaint is felt at; none where nobody said. */
export const cornersOf = ({ side, axle }: Where): readonly Corner[] =>
  side === "unknown" && axle === "unknown"
    ? []
    : CORNERS.filter(
        (corner) =>
          (axle === "unknown" || corner.startsWith(axle)) &&
          (side === "both" || side === "unknown" || corner.endsWith(side)),
      );

/** Side and axle of a set of wheels: what they have in common. */
export const whereOf = (corners: readonly Corner[]): Where => {
  if (corners.length === 0) return { side: "unknown", axle: "unknown" };
  const all = (part: string) => corners.every((corner) => corner.includes(part));
  return {
    side: all("left") ? "left" : all("right") ? "right" : "both",
    axle: all("front") ? "front" : all("rear") ? "rear" : "unknown",
  };
};

/** A wheel added or taken off. */
export const toggleCorner = (where: Where, corner: Corner): Where => {
  const corners = cornersOf(where);
  return whereOf(corners.includes(corner) ? corners.filter((one) => one !== corner) : [...corners, corner]);
};

/** Where a complaint is felt, in words; "" where nobody said. */
export const whereWords = ({ side, axle }: Where): string => {
  if (side === "unknown" && axle === "unknown") return "";
  if (side === "both") return axle === "unknown" ? "all round" : `${axle}, both sides`;
  if (side === "unknown") return axle;
  return axle === "unknown" ? `${side} side` : `${axle} ${side}`;
};
