import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { type Finding, inputTooLargeFinding } from "#contract";

/** Answers with what is wrong and the status that says so. */
export const refuse = (reply: FastifyReply, status: number, findings: readonly Finding[]): FastifyReply =>
  reply.code(status).send({ findings });

const notJsonType: Finding = {
  code: "not-json-type",
  path: "",
  got: "a body of another content type",
  needed: "content-type: application/json",
  hint: "",
};

const malformed: Finding = {
  code: "bad-request",
  path: "",
  got: "a request that cannot be read",
  needed: "a request in the form of HTTP",
  hint: "",
};

const ourFault: Finding = {
  code: "our-fault",
  path: "",
  got: "a request that should have been answered",
  needed: "nothing of you",
  hint: "The program made a mistake. What happened stands in the window the program was started from.",
};

const nothingHere = (method: string, url: string): Finding => ({
  code: "no-such-address",
  path: "",
  got: `${method} ${url.slice(0, 120)}`,
  needed: "an address the program answers",
  hint: "GET /api/calc lists the calculations, GET /api/families the families.",
});

/** What is said where an address is asked in a way it does not answer: the way it does. */
export const otherMethodFinding = (method: string, answered: string): Finding => ({
  code: "other-method",
  path: "",
  got: method,
  needed: answered,
  hint: "",
});

const statusOf = (problem: unknown): number =>
  problem instanceof Error && "statusCode" in problem && typeof problem.statusCode === "number"
    ? problem.statusCode
    : 500;

/** What is said of a request that could not be taken, by its HTTP status. */
const findingOf = (status: number): Finding =>
  status === 413 ? inputTooLargeFinding : status === 415 ? notJsonType : status >= 500 ? ourFault : malformed;

/** Answers an address that cannot be read or is longer than any here, before it is anybody's. */
export const refuseAddress = (problem: Error, _request: FastifyRequest, reply: FastifyReply): void => {
  const status = statusOf(problem);
  void refuse(reply, status, [findingOf(status)]);
};

/** Has everything that goes wrong answered by findings; our own faults are reported to `report` and never shown. */
export const answerByFindings = (app: FastifyInstance, report: (problem: unknown) => void): void => {
  app.setErrorHandler((problem, _request, reply) => {
    const status = statusOf(problem);
    if (status >= 500) report(problem);
    return refuse(reply, status, [findingOf(status)]);
  });
  app.setNotFoundHandler((request, reply) => refuse(reply, 404, [nothingHere(request.method, request.url)]));
};
