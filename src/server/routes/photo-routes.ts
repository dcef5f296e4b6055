import type { Readable } from "node:stream";
import type { FastifyInstance, FastifyRequest } from "fastify";
import { largestPhotoBytes } from "#casework";
import type { Finding } from "#contract";
import { photoTooLarge, tellPhoto } from "#records";
import { addRecordRoutes, type CaseRecords } from "../case-records.ts";
import { refuse } from "../refusals.ts";

/** What a refused upload may still send before its connection is cut; thrown away as it comes. */
const mostThrownAway = 1024 * 1024 * 1024;

const oneYear = "private, max-age=31536000, immutable";

/** Lets the rest of an upload run into nothing, so that the sender gets to read the answer. */
const throwAway = (upload: Readable): void => {
  let size = 0;
  upload.on("error", () => undefined);
  upload.on("data", (piece: Buffer) => {
    size += piece.length;
    if (size > mostThrownAway) upload.destroy();
  });
};

/** The pieces of an upload; ending early leaves the connection open for the answer. */
const piecesOf = (upload: Readable): AsyncIterable<Uint8Array> => upload.iterator({ destroyOnReturn: false });

const unknownPhoto = (hash: string): Finding => ({
  code: "unknown-photo",
  path: "hash",
  got: hash.slice(0, 80),
  needed: "the SHA-256 of a photo that is kept",
  hint: "",
});

/** An upload whose sender has gone: nobody reads the answer, and it is no fault of ours. */
const brokenOff = (): Error => Object.assign(new Error("The upload was broken off."), { statusCode: 400 });

const declaredBytes = (request: FastifyRequest): number => Number(request.headers["content-length"] ?? 0);

/** POST /api/photos keeps the bytes of one photo and answers with their hash; GET /api/photos/:hash gives them back. */
export const addPhotoRoutes = (
  app: FastifyInstance,
  { photos }: CaseRecords,
  report: (problem: unknown) => void,
): void => {
  addRecordRoutes(app, report, (scope) => {
    scope.removeAllContentTypeParsers();
    scope.addContentTypeParser("*", (_request, upload, done) => done(null, upload));

    scope.post("/api/photos", async (request, reply) => {
      const upload = request.raw;
      try {
        const declared = declaredBytes(request);
        if (declared > largestPhotoBytes) throw photoTooLarge(`${Math.ceil(declared / 1024 / 1024)} MB`);
        const { hash, kind, bytes } = await photos.receivePhoto(piecesOf(upload));
        return await reply.code(201).send({ hash, kind, bytes });
      } catch (problem) {
        if (upload.destroyed && !upload.complete) throw brokenOff();
        throwAway(upload);
        throw problem;
      }
    });

    scope.get<{ Params: { hash: string } }>("/api/photos/:hash", async (request, reply) => {
      const { hash } = request.params;
      const bytes = await photos.loadPhoto(hash);
      const kind = bytes === null ? "no-photo" : tellPhoto(bytes).kind;
      if (bytes === null || kind === "no-photo" || kind === "heic") return refuse(reply, 404, [unknownPhoto(hash)]);
      reply.headers({ "content-type": kind, "cache-control": oneYear, "x-content-type-options": "nosniff" });
      return reply.send(bytes);
    });
  });
};
