import type { RubberFault } from "#casework";

/** The fault in a few words: "torn", "loose, 1.0 mm", "firmer, 2 times". */
export function faultWords(fault: RubberFault): string {
  switch (fault.kind) {
    case "torn":
      return "torn";
    case "loose":
      return `loose, ${(fault.play * 1000).toFixed(1)} mm${fault.assumed ? " assumed" : ""}`;
    case "firmer":
      return `firmer, ${fault.factor} times`;
  }
}
