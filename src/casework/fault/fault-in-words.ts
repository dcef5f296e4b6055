import type { RubberFault } from "../fault-effect.ts";
import { firmerWords } from "./firmer-rubber.ts";

/** The fault in a few words: "torn", "loose, 1.0 mm", "firmer, 2 times", "firmer, 55 to 65 Shore A". */
export function faultInWords(fault: RubberFault): string {
  switch (fault.kind) {
    case "torn":
      return "torn";
    case "loose":
      return `loose, ${(fault.play * 1000).toFixed(1)} mm${fault.assumed ? " assumed" : ""}`;
    case "firmer":
      return firmerWords(fault);
  }
}
