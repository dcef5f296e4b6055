import type { FastifyInstance } from "fastify";
import { refuse } from "./refusals.ts";

const ownNames = new Set(["localhost", "127.0.0.1", "[::1]"]);

/** Answers only requests made to this machine by one of its own names, so that a foreign page cannot pose as ours by a rebound name. */
export const answerOwnNamesOnly = (app: FastifyInstance): void => {
  app.addHook("onRequest", async (request, reply) => {
    const name = (request.headers.host ?? "").replace(/:\d+$/, "").toLowerCase();
    if (ownNames.has(name)) return;
    await refuse(reply, 403, [
      {
        code: "foreign-host",
        path: "",
        got: name.slice(0, 80),
        needed: "localhost or 127.0.0.1",
        hint: "Open the address the program printed.",
      },
    ]);
  });
};
