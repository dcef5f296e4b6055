import type { FastifyInstance } from "fastify";
import { addRecordRoutes, type CaseRecords } from "../case-records.ts";
import { addCarRoutes } from "./car-routes.ts";
import { addDocumentRoutes } from "./document-routes.ts";
import { addLookRoutes } from "./look-routes.ts";

/** Cases: cars, the documents about them, looks. */
export const addCaseRoutes = (app: FastifyInstance, records: CaseRecords, report: (problem: unknown) => void): void => {
  addRecordRoutes(app, report, (scope) => {
    addCarRoutes(scope, records);
    addDocumentRoutes(scope, records);
    addLookRoutes(scope, records);
  });
};
