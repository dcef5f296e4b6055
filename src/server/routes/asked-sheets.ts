import type { FastifyInstance, FastifyReply } from "fastify";
import { formatSheetFindings, parseKeptFamilyText, parseSheetQuestion } from "#contract";
import { printAskedSheet } from "#report";
import type { FamilyShelf } from "../family-shelf.ts";
import { type BodyText, bodyOf } from "../json-body.ts";
import { nameInQuery } from "../name-in-query.ts";
import { refuse } from "../refusals.ts";
import { unknownFamilyFinding } from "./families.ts";

const printSheet = async (
  body: BodyText,
  shelf: FamilyShelf,
  today: () => string,
  by: string | null,
  reply: FastifyReply,
): Promise<FastifyReply> => {
  const asked = "findings" in body ? body : parseSheetQuestion(body.text);
  if ("findings" in asked) return refuse(reply, 422, asked.findings);
  const found: Parameters<typeof asked.value.withFamilies>[0][number][] = [];
  for (const { path, id } of asked.value.families) {
    const shelved = (await shelf.load(id)) ?? (await shelf.loadExample(id));
    if (shelved === null) return refuse(reply, 422, [await unknownFamilyFinding(shelf, id, path)]);
    const parsed = parseKeptFamilyText(shelved.text);
    if ("findings" in parsed) return refuse(reply, 422, parsed.findings);
    found.push(parsed.family);
  }
  const stamp = { date: today(), ...(by === null ? {} : { by }) };
  const question = asked.value.withFamilies(found);
  const printed = printAskedSheet(question, stamp);
  if ("findings" in printed) return refuse(reply, 422, formatSheetFindings(question.kind, printed.findings));
  return reply
    .type("application/pdf")
    .header("content-disposition", `attachment; filename="${printed.fileName}"`)
    .send(await printed.pdf);
};

/** POST /api/sheets prints one computed sheet of a car line: a PDF of one A4 page; `?by=` names who makes it. */
export const addAskedSheetsRoute = (app: FastifyInstance, shelf: FamilyShelf, today: () => string): void => {
  app.post("/api/sheets", (request, reply) =>
    printSheet(bodyOf(request), shelf, today, nameInQuery(request.query), reply),
  );
};
