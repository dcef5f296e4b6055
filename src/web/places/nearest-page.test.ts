import { expect, test } from "vitest";
import { nearestPage } from "./nearest-page.ts";

test.each([
  ["/famlies", "/families"],
  ["/counters", "/counter"],
  ["/refrence", "/reference"],
  ["/families/ouzel-saloon/undersid", "/families/ouzel-saloon/underside"],
  ["/families/ouzel-saloon/underside/rear-lft", "/families/ouzel-saloon/underside"],
  ["/familes/ouzel-saloon", "/families/ouzel-saloon"],
  ["/cases/visit-1/jobcard", "/cases/visit-1/job-card"],
  ["/cases/visit-1/nothing-like-it", "/cases/visit-1"],
])("%s meant %s", (asked, meant) => {
  expect(nearestPage(asked)?.path).toBe(meant);
});

test("what is near to no page is not guessed", () => {
  expect(nearestPage("/")).toBeNull();
  expect(nearestPage("/wp-login-and-other-things")).toBeNull();
});
