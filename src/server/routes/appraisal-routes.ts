import type { FastifyInstance, FastifyReply } from "fastify";
import { appraiseVisit, type ProgrammeSolver } from "#casework";
import { checkDocumentId, formatAppraisal } from "#contract";
import { addRecordRoutes, type CaseRecords } from "../case-records.ts";
import type { FamilyShelf } from "../family-shelf.ts";
import { refuse } from "../refusals.ts";
import { loadRecordedVisit, type RecordedVisit } from "../visit-record.ts";
import { unknownVisit } from "./document-routes.ts";

/** What the routes of appraisals are given. */
export interface AppraisalParts {
  readonly records: CaseRecords;
  readonly families: FamilyShelf;
  readonly solver: ProgrammeSolver;
}

/** The visit of an address; where there is none the reply has been sent and undefined comes back. */
export const visitOfAddress = async (
  { records, families }: AppraisalParts,
  id: string,
  reply: FastifyReply,
): Promise<RecordedVisit | undefined> => {
  const wrongId = checkDocumentId("visit", id);
  const loaded = wrongId.length > 0 ? { findings: wrongId } : await loadRecordedVisit(records.cases, families, id);
  if (loaded === null) await refuse(reply, 404, [unknownVisit(id, "id")]);
  else if ("findings" in loaded) await refuse(reply, 422, loaded.findings);
  else return loaded;
  return undefined;
};

/** GET /api/visits/:id/appraisal: findings, suspects, plan, job card and hand-over of a visit on record. */
export const addAppraisalRoutes = (
  app: FastifyInstance,
  parts: AppraisalParts,
  report: (problem: unknown) => void,
): void => {
  addRecordRoutes(app, report, (scope) => {
    scope.get<{ Params: { id: string } }>("/api/visits/:id/appraisal", async (request, reply) => {
      const loaded = await visitOfAddress(parts, request.params.id, reply);
      if (loaded === undefined) return reply;
      return reply
        .header("cache-control", "no-cache")
        .send(formatAppraisal(appraiseVisit(loaded.record, parts.solver)));
    });
  });
};
