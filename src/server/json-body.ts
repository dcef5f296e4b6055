import type { FastifyInstance, FastifyRequest } from "fastify";
import { type JsonReading, notUtf8Finding, readJson } from "#contract";

/** Reads bytes as JSON in UTF-8: its value, or what is wrong with it. */
export const readJsonBytes = (bytes: Uint8Array): JsonReading => {
  try {
    return readJson(new TextDecoder("utf-8", { fatal: true }).decode(bytes));
  } catch (problem) {
    if (problem instanceof TypeError) return { readable: false, findings: [notUtf8Finding] };
    throw problem;
  }
};

/** Has every JSON body read strictly, with findings; a handler gets the reading, never a half-trusted object. */
export const readJsonBodies = (app: FastifyInstance): void => {
  app.removeAllContentTypeParsers();
  app.addContentTypeParser("application/json", { parseAs: "buffer" }, (_request, body: Buffer, done) => {
    done(null, readJsonBytes(body));
  });
};

/** The reading of a request's body; a request without one reads as an empty text. */
export const readingOf = (request: FastifyRequest): JsonReading =>
  request.body === undefined || request.body === null ? readJson("") : (request.body as JsonReading);
