import type { FastifyInstance, FastifyReply } from "fastify";
import { computeFaultEffect, type FaultQuestion } from "#casework";
import { formatQuestionFindings, parseFamilyText, parseFaultQuestion } from "#contract";
import { printFaultSheet } from "#report";
import type { FamilyShelf } from "../family-shelf.ts";
import { type BodyText, bodyOf } from "../json-body.ts";
import { nameInQuery } from "../name-in-query.ts";
import { refuse } from "../refusals.ts";
import { unknownFamilyFinding } from "./families.ts";

/** Name a sheet is kept under: family, position and fault in lower-case words. */
const fileNameOf = (family: string, { position, fault }: FaultQuestion): string =>
  `${[family, ...position.split("/"), fault.kind].join("-").replaceAll(/[^a-z0-9-]/g, "")}.pdf`;

const printSheet = async (
  body: BodyText,
  shelf: FamilyShelf,
  today: () => string,
  by: string | null,
  reply: FastifyReply,
): Promise<FastifyReply> => {
  const asked = "findings" in body ? body : parseFaultQuestion(body.text);
  if ("findings" in asked) return refuse(reply, 422, asked.findings);
  const { family: id, question } = asked.value;
  const shelved = (await shelf.load(id)) ?? (await shelf.loadExample(id));
  if (shelved === null) return refuse(reply, 422, [await unknownFamilyFinding(shelf, id, "family")]);
  const parsed = parseFamilyText(shelved.text);
  if ("findings" in parsed) return refuse(reply, 422, parsed.findings);
  const computed = computeFaultEffect(parsed.family, question);
  if ("findings" in computed) return refuse(reply, 422, formatQuestionFindings(computed.findings));
  const bytes = await printFaultSheet({
    family: parsed.family,
    effect: computed.effect,
    date: today(),
    ...(by === null ? {} : { by }),
  });
  return reply
    .type("application/pdf")
    .header("content-disposition", `attachment; filename="${fileNameOf(id, question)}"`)
    .send(bytes);
};

/** POST /api/sheet prints what one fault does to a family: a PDF of one A4 page; `?by=` names who makes it. */
export const addSheetRoute = (app: FastifyInstance, shelf: FamilyShelf, today: () => string): void => {
  app.post("/api/sheet", (request, reply) =>
    printSheet(bodyOf(request), shelf, today, nameInQuery(request.query), reply),
  );
};
