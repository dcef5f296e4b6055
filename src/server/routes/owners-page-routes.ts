import type { FastifyInstance } from "fastify";
import { appraiseVisit, recordedBy } from "#casework";
import { printOwnersPage } from "#report";
import { addRecordRoutes } from "../case-records.ts";
import { nameInQuery } from "../name-in-query.ts";
import { type AppraisalParts, visitOfAddress } from "./appraisal-routes.ts";

/** Name a page is kept under: the plate or the car in lower-case words, and the day. */
const fileNameOf = (plate: string, day: string): string =>
  `${["owners-page", ...plate.toLowerCase().split(/[^a-z0-9]+/), day].filter((part) => part !== "").join("-")}.pdf`;

/** "12 March 2026", as it is written on paper. */
const dateWords = new Intl.DateTimeFormat("en-GB", { dateStyle: "long", timeZone: "UTC" });

/** GET /api/visits/:id/owners-page: what the car needs and by when, for its owner, as a PDF; `?by=` names who makes it. */
export const addOwnersPageRoutes = (
  app: FastifyInstance,
  parts: AppraisalParts,
  report: (problem: unknown) => void,
): void => {
  addRecordRoutes(app, report, (scope) => {
    scope.get<{ Params: { id: string } }>("/api/visits/:id/owners-page", async (request, reply) => {
      const loaded = await visitOfAddress(parts, request.params.id, reply);
      if (loaded === undefined) return reply;
      const { car, visit, record } = loaded;
      const bytes = await printOwnersPage({
        family: record.family,
        car: car.body,
        visit: { ...visit.body, by: recordedBy(visit.body, record.looks, nameInQuery(request.query)) },
        rates: record.rates,
        words: record.enquiry?.words ?? "",
        appraisal: appraiseVisit(record, parts.solver),
        date: dateWords.format(new Date(`${visit.body.date}T00:00:00Z`)),
      });
      return reply
        .type("application/pdf")
        .header("cache-control", "no-cache")
        .header(
          "content-disposition",
          `attachment; filename="${fileNameOf(car.body.registration || car.body.name, visit.body.date)}"`,
        )
        .send(bytes);
    });
  });
};
