import { describe, expect, it } from "vitest";
import { scoreMetrology } from "./metrology-rows.ts";

describe("metrology against the check values", () => {
  it.each(scoreMetrology().map((row) => [`${row.check}: ${row.quantity} (${row.cases})`, row] as const))(
    "%s",
    (_, row) => {
      expect(row.worst).toBeLessThanOrEqual(row.tolerance.most);
    },
  );
});
