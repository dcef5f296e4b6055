import type { FastifyInstance, FastifyRequest } from "fastify";
import { type Finding, notUtf8Finding } from "#contract";

/** The text a request brought, or why it is none. */
export type BodyText = { readonly text: string } | { readonly findings: readonly Finding[] };

const decode = (bytes: Uint8Array): BodyText => {
  try {
    return { text: new TextDecoder("utf-8", { fatal: true }).decode(bytes) };
  } catch (problem) {
    if (problem instanceof TypeError) return { findings: [notUtf8Finding] };
    throw problem;
  }
};

/** Has JSON bodies taken as text, so that each route reads them strictly and with findings. */
export const takeJsonAsText = (app: FastifyInstance): void => {
  app.removeAllContentTypeParsers();
  app.addContentTypeParser("application/json", { parseAs: "buffer" }, (_request, body: Buffer, done) => {
    done(null, decode(body));
  });
};

/** The text of a request's body; a request without one brings an empty text. */
export const bodyOf = (request: FastifyRequest): BodyText =>
  request.body === undefined || request.body === null ? { text: "" } : (request.body as BodyText);
