import type { FastifyInstance } from "fastify";
import { formatFamily, jsonSchemaOf, type Parsed, parseSilhouette, readJson, silhouetteSheet } from "#contract";
import { type BodyText, bodyOf } from "../json-body.ts";
import { refuse } from "../refusals.ts";

/** The family of the silhouette a body holds, as it stands in a file; nothing of it is saved. */
const familyOf = (body: BodyText): Parsed<unknown> => {
  if ("findings" in body) return body;
  const reading = readJson(body.text);
  if (!reading.readable) return { findings: reading.findings };
  const made = parseSilhouette(reading.value, reading.findings);
  return "findings" in made ? made : { value: formatFamily(made.family) };
};

/** GET /api/silhouettes says what can be entered; POST /api/families/from-silhouette makes a family of it. */
export const addSilhouetteRoutes = (app: FastifyInstance): void => {
  app.get("/api/silhouettes", () => ({ entries: jsonSchemaOf(silhouetteSheet) }));

  app.post("/api/families/from-silhouette", (request, reply) => {
    const family = familyOf(bodyOf(request));
    return "findings" in family ? refuse(reply, 422, family.findings) : reply.send({ family: family.value });
  });
};
