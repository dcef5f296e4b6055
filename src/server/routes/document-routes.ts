import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { type CaseStore, type DocumentKind, loadIsInvented, type StoredDocument } from "#casework";
import {
  checkDocumentId,
  checkMixing,
  checkOdometer,
  type Finding,
  formatBody,
  formatStoredDocument,
  isDocumentKind,
  type OdometerReading,
  parseSentDocument,
  type SentDocument,
  unknownKindFinding,
} from "#contract";
import type { CaseRecords } from "../case-records.ts";
import { bodyOf } from "../json-body.ts";
import { refuse } from "../refusals.ts";

interface DocumentAddress {
  readonly Params: { readonly kind: string; readonly id: string };
}

const etag = (version: number): string => `"${version}"`;

/** The version a writer began from: 0 for a new document, undefined where the request does not say. */
const seenVersion = (request: FastifyRequest): number | undefined => {
  if (request.headers["if-none-match"] === "*") return 0;
  const version = /^"(\d{1,9})"$/.exec(request.headers["if-match"] ?? "")?.[1];
  return version === undefined ? undefined : Number(version);
};

const versionNeeded: Finding = {
  code: "version-needed",
  path: "",
  got: "a document without the version it began from",
  needed: "If-Match with the version seen, or If-None-Match: * for a new document",
  hint: "The version stands in the ETag of GET.",
};

const superseded = (kind: DocumentKind, id: string, latest: StoredDocument | null): Finding => ({
  code: "superseded",
  path: "",
  got: latest === null ? "a version of a document that is not there" : "a version that is no longer the latest",
  needed: latest === null ? `a new ${kind} ${id}` : `version ${latest.version} of ${kind} ${id}, saved by ${latest.by}`,
  hint: "Nothing was saved. Both versions are in the answer; settle them and save again.",
});

const notOnRecord = (kind: DocumentKind, id: string): Finding => ({
  code: "unknown-document",
  path: "id",
  got: `${kind} ${id}`,
  needed: "the id of a document on record",
  hint: "",
});

/** Said of a car that is not on record. */
export const unknownCar = (id: string, path: string): Finding => ({
  code: "unknown-car",
  path,
  got: id,
  needed: "the id of a car on record",
  hint: "Save the car first; GET /api/cars lists them.",
});

/** Said of a visit that is not on record. */
export const unknownVisit = (id: string, path: string): Finding => ({
  code: "unknown-visit",
  path,
  got: id,
  needed: "the id of a visit on record",
  hint: "Save the visit first and send this again; keep it until then.",
});

const checkVisit = async (
  cases: CaseStore,
  id: string,
  { body, confirmed }: SentDocument<"visit">,
): Promise<readonly Finding[]> => {
  const car = await cases.loadDocument("car", body.car);
  if (car === null) return [unknownCar(body.car, "document.car")];
  if (body.odometerKm === null) return [];
  const readings = (await cases.listVisits(body.car)).flatMap((visit): readonly OdometerReading[] =>
    visit.body.odometerKm === null
      ? []
      : [{ visit: visit.id, date: visit.body.date, odometerKm: visit.body.odometerKm }],
  );
  const reading = { visit: id, date: body.date, odometerKm: body.odometerKm };
  return checkOdometer(reading, readings, car.body.odometerOffsetKm, confirmed);
};

const isVisit = (kind: DocumentKind, sent: SentDocument): sent is SentDocument<"visit"> => kind === "visit";
const isOfOneKind = (kind: DocumentKind, sent: SentDocument): sent is SentDocument<"car" | "settings"> =>
  kind === "car" || kind === "settings";

/** What a document does not agree with in what is on record. */
const checkAgainstRecords = async (
  cases: CaseStore,
  kind: DocumentKind,
  id: string,
  sent: SentDocument,
): Promise<readonly Finding[]> => {
  if (isVisit(kind, sent)) return checkVisit(cases, id, sent);
  if (isOfOneKind(kind, sent)) return checkMixing(sent.body.invented, await loadIsInvented(cases), "document.invented");
  if (kind === "car-line") return [];
  return (await cases.loadDocument("visit", id)) === null ? [unknownVisit(id, "id")] : [];
};

const refuseSuperseded = <K extends DocumentKind>(
  reply: FastifyReply,
  kind: K,
  id: string,
  sent: SentDocument<K>,
  latest: StoredDocument<K> | null,
): FastifyReply => {
  if (latest !== null) reply.header("etag", etag(latest.version));
  return reply.code(412).send({
    findings: [superseded(kind, id, latest)],
    yours: formatBody(kind, sent.body),
    latest: latest === null ? null : formatStoredDocument(latest),
  });
};

const saveDocument = async <K extends DocumentKind>(
  { cases, now }: CaseRecords,
  kind: K,
  request: FastifyRequest<DocumentAddress>,
  reply: FastifyReply,
): Promise<FastifyReply> => {
  const { id } = request.params;
  const wrongId = checkDocumentId(kind, id);
  if (wrongId.length > 0) return refuse(reply, 422, wrongId);
  const text = bodyOf(request);
  const sent = "findings" in text ? text : parseSentDocument(kind, text.text);
  if ("findings" in sent) return refuse(reply, 422, sent.findings);
  const findings = await checkAgainstRecords(cases, kind, id, sent.value);
  if (findings.length > 0) return refuse(reply, 422, findings);
  const seen = seenVersion(request);
  if (seen === undefined) return refuse(reply, 428, [versionNeeded]);
  if (seen > 0 && (await cases.loadDocument(kind, id)) === null) {
    return refuseSuperseded(reply, kind, id, sent.value, null);
  }
  const { body, by } = sent.value;
  const outcome = await cases.saveDocument(kind, id, body, { expectedVersion: seen, by, at: now() });
  if ("conflict" in outcome) return refuseSuperseded(reply, kind, id, sent.value, outcome.conflict);
  const { version } = outcome.saved;
  return reply
    .code(version === 1 ? 201 : 200)
    .header("etag", etag(version))
    .send(formatStoredDocument(outcome.saved));
};

/** Documents: one with its version, all its versions, saving the next one. */
export const addDocumentRoutes = (app: FastifyInstance, records: CaseRecords): void => {
  app.get<DocumentAddress>("/api/documents/:kind/:id", async (request, reply) => {
    const { kind, id } = request.params;
    if (!isDocumentKind(kind)) return refuse(reply, 404, [unknownKindFinding(kind)]);
    const stored = await records.cases.loadDocument(kind, id);
    if (stored === null) return refuse(reply, 404, [notOnRecord(kind, id)]);
    reply.headers({ etag: etag(stored.version), "cache-control": "no-cache" });
    if (request.headers["if-none-match"] === etag(stored.version)) return reply.code(304).send();
    return reply.send(formatStoredDocument(stored));
  });

  app.get<DocumentAddress>("/api/documents/:kind/:id/versions", async (request, reply) => {
    const { kind, id } = request.params;
    if (!isDocumentKind(kind)) return refuse(reply, 404, [unknownKindFinding(kind)]);
    const versions = await records.cases.loadHistory(kind, id);
    if (versions.length === 0) return refuse(reply, 404, [notOnRecord(kind, id)]);
    return reply.send({ versions: versions.map((version) => formatStoredDocument(version)) });
  });

  app.put<DocumentAddress>("/api/documents/:kind/:id", async (request, reply) => {
    const { kind } = request.params;
    if (!isDocumentKind(kind)) return refuse(reply, 404, [unknownKindFinding(kind)]);
    return saveDocument(records, kind, request, reply);
  });
};
