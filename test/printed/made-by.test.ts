import { expect, it } from "vitest";
import { demoFamilySheets } from "#demo";
import { readPdf } from "../../src/report/read-pdf.ts";
import { buildApp } from "../../src/server/app.ts";
import { openFamilyShelf } from "../../src/server/family-shelf.ts";

const question = {
  sheet: "fault",
  family: "ouzel-saloon",
  corner: "rear-left",
  position: "rear-left/trailing-link/inner-bush",
  fault: { kind: "torn", grade: 2 },
  condition: { braking_n: 2000 },
};

it("the sheet of one fault says who made it where the request names them", async () => {
  const store = { list: async () => [], load: async () => null, save: async () => expect.fail("nothing is saved") };
  const app = buildApp({
    pages: null,
    families: openFamilyShelf(store, demoFamilySheets),
    today: () => "14 May 2031",
    report: (problem) => expect.fail(String(problem)),
  });
  const wordsOf = async (query: string): Promise<string> => {
    const headers = { "content-type": "application/json" };
    const reply = await app.inject({
      method: "POST",
      url: `/api/sheets${query}`,
      payload: JSON.stringify(question),
      headers,
    });
    return readPdf(reply.rawPayload).texts.join(" ");
  };
  expect(await wordsOf("?by=I.%20Marden")).toContain("I. Marden");
  expect(await wordsOf("")).not.toContain("Marden");
  await app.close();
});
