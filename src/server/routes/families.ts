import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import type { CaseStore } from "#casework";
import { type Finding, findNearest, parseFamilyText, parseKeptFamilyText } from "#contract";
import { mmFromMetres } from "#quantity";
import type { FamilyShelf, ShelvedFamily } from "../family-shelf.ts";
import { bodyOf } from "../json-body.ts";
import { refuse } from "../refusals.ts";

const etag = (version: string): string => `"${version}"`;

/** Ids of the families that were taken off the list. */
const loadOffList = async (cases: CaseStore | null): Promise<ReadonlySet<string>> => {
  const lines = cases === null ? [] : await cases.listDocuments("car-line");
  return new Set(lines.filter(({ body }) => body.offList).map(({ id }) => id));
};

/** One line of the list: what a family is, or that its sheet cannot be read. */
const describeFamily = (
  { id, text, version, readOnly }: ShelvedFamily,
  offList: ReadonlySet<string>,
): Record<string, unknown> => {
  const parsed = parseKeptFamilyText(text);
  const kept = { id, version, read_only: readOnly, off_list: offList.has(id) };
  if ("findings" in parsed) return { ...kept, name: id, findings: parsed.findings };
  const { name, invented, fromYear, toYear, front, rear, wheelbase, kerbMass } = parsed.family;
  return {
    ...kept,
    name,
    invented,
    ...(fromYear !== undefined && { from_year: fromYear }),
    ...(toYear !== undefined && { to_year: toYear }),
    wheelbase_mm: mmFromMetres(wheelbase),
    kerb_mass_kg: kerbMass,
    front: { layout: front.layout, rung: front.rung, tyre_size: front.wheel.tyreSize },
    rear: { layout: rear.layout, rung: rear.rung, tyre_size: rear.wheel.tyreSize },
  };
};

/** What is said of an id nobody has. */
export const unknownFamilyFinding = async (shelf: FamilyShelf, id: string, path: string): Promise<Finding> => {
  const shown = [...(await shelf.list()), ...(await shelf.listExamples())];
  const nearest = findNearest(
    id,
    shown.map((family) => family.id),
  );
  return {
    code: "unknown-family",
    path,
    got: id.slice(0, 80),
    needed: "the id of a family",
    hint: nearest === null ? "The list of families names them all." : `The nearest is ${nearest}.`,
  };
};

const readOnlyFinding = (id: string): Finding => ({
  code: "read-only",
  path: "id",
  got: id,
  needed: "a family of the workshop's own",
  hint: "This family comes with the program. Save a copy under another id.",
});

const versionNeeded: Finding = {
  code: "version-needed",
  path: "",
  got: "a family without the version it began from",
  needed: "If-Match with the version seen, or If-None-Match: * for a new family",
  hint: "The version stands in the ETag of GET.",
};

const superseded = (id: string, gone: boolean): Finding => ({
  code: "superseded",
  path: "",
  got: gone ? "a version of a family that is not there" : "a version that is no longer the latest",
  needed: `the latest version of ${id}`,
  hint: "Nothing was saved. Both versions are in the answer; settle them and save again.",
});

/** The version a writer began from: null for a new family, undefined where the request does not say. */
const seenVersion = (request: FastifyRequest): string | null | undefined => {
  if (request.headers["if-none-match"] === "*") return null;
  return /^"([^"]+)"$/.exec(request.headers["if-match"] ?? "")?.[1];
};

/** Everything that keeps the text from being this family. */
const checkText = (id: string, text: string): readonly Finding[] => {
  const parsed = parseFamilyText(text);
  if ("findings" in parsed) return parsed.findings;
  if (parsed.family.id === id) return [];
  return [
    {
      code: "id-not-of-address",
      path: "id",
      got: parsed.family.id,
      needed: id,
      hint: "A family is saved under its own id.",
    },
  ];
};

const saveFamily = async (
  shelf: FamilyShelf,
  id: string,
  request: FastifyRequest,
  reply: FastifyReply,
): Promise<FastifyReply> => {
  if (shelf.isReadOnly(id)) return refuse(reply, 403, [readOnlyFinding(id)]);
  const body = bodyOf(request);
  if ("findings" in body) return refuse(reply, 422, body.findings);
  const findings = checkText(id, body.text);
  if (findings.length > 0) return refuse(reply, 422, findings);
  const seen = seenVersion(request);
  if (seen === undefined) return refuse(reply, 428, [versionNeeded]);
  const outcome = await shelf.save(id, body.text, seen);
  if (outcome.kind === "kept") {
    return reply
      .code(seen === null ? 201 : 200)
      .header("etag", etag(outcome.version))
      .send({ version: outcome.version });
  }
  const { current } = outcome;
  if (current !== null) reply.header("etag", etag(current.version));
  return reply.code(412).send({
    findings: [superseded(id, current === null)],
    yours: body.text,
    latest: current === null ? null : { text: current.text, version: current.version },
  });
};

interface FamilyAddress {
  readonly Params: { readonly id: string };
  /** With "examples" a family that may only be looked at is answered too. */
  readonly Querystring: { readonly examples?: string };
}

/** Families: the list, one document with its version, saving a whole document. */
export const addFamilyRoutes = (app: FastifyInstance, shelf: FamilyShelf, cases: CaseStore | null): void => {
  app.get("/api/families", async () => {
    const offList = await loadOffList(cases);
    const describe = (family: ShelvedFamily) => describeFamily(family, offList);
    return {
      families: (await shelf.list()).map(describe),
      examples: (await shelf.listExamples()).map(describe),
    };
  });

  app.get<FamilyAddress>("/api/families/:id", async (request, reply) => {
    const { id } = request.params;
    const wide = request.query.examples !== undefined;
    const family = (await shelf.load(id)) ?? (wide ? await shelf.loadExample(id) : null);
    if (family === null) return refuse(reply, 404, [await unknownFamilyFinding(shelf, id, "id")]);
    reply.headers({ etag: etag(family.version), "cache-control": "no-cache" });
    if (request.headers["if-none-match"] === etag(family.version)) return reply.code(304).send();
    return reply.type("application/json; charset=utf-8").send(family.text);
  });

  app.put<{ Params: { id: string } }>("/api/families/:id", (request, reply) =>
    saveFamily(shelf, request.params.id, request, reply),
  );
};
