import { describe, expect, it } from "vitest";
import { scoreDiagnosis } from "./diagnosis-rows.ts";

describe("diagnosis against the check values and against summing over everything", () => {
  it.each(scoreDiagnosis().map((row) => [`${row.check}: ${row.quantity} (${row.cases})`, row] as const))(
    "%s",
    (_, row) => {
      expect(row.worst).toBeLessThanOrEqual(row.tolerance.most);
    },
  );
});
