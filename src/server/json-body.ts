import type { FastifyInstance, FastifyRequest } from "fastify";
import type { Finding, JsonReading } from "#contract";
import { readJson } from "#contract";

/** Larger than any document of this program; the reader refuses far fewer values than fit in it. */
export const largestBodyBytes = 64 * 1024 * 1024;

const notUtf8: Finding = {
  code: "not-utf-eight",
  path: "",
  got: "bytes that are not UTF-8",
  needed: "JSON in UTF-8",
  hint: "Save the text as UTF-8 and send it again.",
};

/** Reads bytes as JSON in UTF-8: its value, or what is wrong with it. */
export const readJsonBytes = (bytes: Uint8Array): JsonReading => {
  try {
    return readJson(new TextDecoder("utf-8", { fatal: true }).decode(bytes));
  } catch (problem) {
    if (problem instanceof TypeError) return { readable: false, findings: [notUtf8] };
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
