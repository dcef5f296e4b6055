import { describe, expect, it } from "vitest";
import { scorePlans } from "./plan-rows.ts";

describe("planning.solve against the reference", () => {
  it.each(scorePlans().map((row) => [`${row.check}: ${row.quantity} (${row.cases})`, row] as const))("%s", (_, row) => {
    expect(row.worst).toBeLessThanOrEqual(row.tolerance.most);
  });
});
