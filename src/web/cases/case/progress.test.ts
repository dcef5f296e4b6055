import { expect, test } from "vitest";
import { stageOrder } from "#casework";
import { stageAfter, stageNow } from "./progress.ts";

test("a visit stands at the first stage that is not done; options has no page and holds nobody up", () => {
  expect(stageNow([])).toBe("enquiry");
  expect(stageNow(["enquiry", "car", "readings", "underside", "findings"])).toBe("plan");
  expect(stageNow([...stageOrder])).toBe("hand-over");
});

test("stages follow each other, after the last comes none", () => {
  expect(stageAfter("enquiry")).toBe("car");
  expect(stageAfter("hand-over")).toBeNull();
});
