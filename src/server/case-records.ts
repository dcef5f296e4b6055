import type { FastifyInstance } from "fastify";
import type { CaseStore } from "#casework";
import type { KeptPhoto } from "#records";
import { RecordsTrouble } from "#records";
import { refuse } from "./refusals.ts";

/** Where photos go to and come from. */
export interface PhotoKeeper {
  receivePhoto(pieces: AsyncIterable<Uint8Array>): Promise<KeptPhoto>;
  loadPhoto(hash: string): Promise<Uint8Array | null>;
  hasPhoto(hash: string): Promise<boolean>;
}

/** What the routes of cases are given. */
export interface CaseRecords {
  readonly cases: CaseStore;
  readonly photos: PhotoKeeper;
  /** The server's clock, ISO 8601. */
  readonly now: () => string;
}

/** HTTP status of what records can be refused for. */
const statuses: Readonly<Record<string, number>> = {
  "no-space": 507,
  "photo-not-kept": 507,
  "records-busy": 503,
  "photo-too-large": 413,
  "not-a-photo": 422,
  "photo-heic": 422,
};

/**
 * Adds routes whose troubles with the records are answered by their findings; those the sender is not to blame for
 * are reported too.
 */
export const addRecordRoutes = (
  app: FastifyInstance,
  report: (problem: unknown) => void,
  add: (scope: FastifyInstance) => void,
): void => {
  app.register(async (scope) => {
    scope.setErrorHandler((problem, _request, reply) => {
      if (!(problem instanceof RecordsTrouble)) throw problem;
      const status = statuses[problem.finding.code] ?? 500;
      if (status >= 500) report(problem.cause ?? problem);
      return refuse(reply, status, [problem.finding]);
    });
    add(scope);
  });
};
