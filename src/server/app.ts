import fastify, { type FastifyInstance } from "fastify";
import { type Door, doors, largestInputBytes, type ProgrammeSolver } from "#contract";
import type { CaseRecords } from "./case-records.ts";
import type { FamilyShelf } from "./family-shelf.ts";
import { takeJsonAsText } from "./json-body.ts";
import { answerOwnNamesOnly } from "./loopback-only.ts";
import { answerByFindings, refuseAddress } from "./refusals.ts";
import { addAppraisalRoutes } from "./routes/appraisal-routes.ts";
import { addAskedSheetsRoute } from "./routes/asked-sheets.ts";
import { addCalcRoutes } from "./routes/calc.ts";
import { addCaseRoutes } from "./routes/case-routes.ts";
import { addFamilyRoutes } from "./routes/families.ts";
import { addOwnersPageRoutes } from "./routes/owners-page-routes.ts";
import { addPages } from "./routes/pages.ts";
import { addPhotoRoutes } from "./routes/photo-routes.ts";
import { addSilhouetteRoutes } from "./routes/silhouettes.ts";

/** What the server is given from outside; everything it touches stands here. */
export interface ServerParts {
  /** Folder of the built pages; null serves none. */
  readonly pages: string | null;
  readonly families: FamilyShelf;
  /** Cases and photos; absent serves none. */
  readonly records?: CaseRecords;
  /** What plans are searched with; absent serves no appraisals. */
  readonly solver?: ProgrammeSolver;
  /** Today's date as it is written on paper. */
  readonly today: () => string;
  /** Told of every fault of ours, which the answer itself never shows. */
  readonly report: (problem: unknown) => void;
  /** The calculations offered; absent = all. */
  readonly doors?: readonly Door[];
}

/** Builds the server with all its routes; it listens nowhere yet. */
export const buildApp = (parts: ServerParts): FastifyInstance => {
  const app = fastify({
    bodyLimit: largestInputBytes,
    forceCloseConnections: true,
    frameworkErrors: refuseAddress,
  });
  answerOwnNamesOnly(app);
  takeJsonAsText(app);
  answerByFindings(app, parts.report);
  addCalcRoutes(app, parts.doors ?? doors);
  addFamilyRoutes(app, parts.families, parts.records?.cases ?? null);
  addSilhouetteRoutes(app);
  addAskedSheetsRoute(app, parts.families, parts.today);
  if (parts.records !== undefined) addCaseRoutes(app, parts.records, parts.report);
  if (parts.records !== undefined) addPhotoRoutes(app, parts.records, parts.report);
  const { records, families, solver } = parts;
  if (records !== undefined && solver !== undefined) {
    addAppraisalRoutes(app, { records, families, solver }, parts.report);
    addOwnersPageRoutes(app, { records, families, solver }, parts.report);
  }
  if (parts.pages !== null) addPages(app, parts.pages);
  return app;
};
