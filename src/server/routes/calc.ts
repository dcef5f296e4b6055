import type { FastifyInstance } from "fastify";
import { askDoorText, type Door, describeDoor, findDoor, unknownDoorFinding } from "#contract";
import { bodyOf } from "../json-body.ts";
import { otherMethodFinding, refuse } from "../refusals.ts";

/** GET /api/calc lists the calculations with their schemas; POST /api/calc/:id answers one. */
export const addCalcRoutes = (app: FastifyInstance, doors: readonly Door[]): void => {
  app.get("/api/calc", () => ({ calculations: doors.map(describeDoor) }));

  app.post<{ Params: { id: string } }>("/api/calc/:id", (request, reply) => {
    const door = findDoor(request.params.id, doors);
    if (door === null) return refuse(reply, 404, [unknownDoorFinding(request.params.id, doors)]);
    const body = bodyOf(request);
    const answer = "findings" in body ? body : askDoorText(door.id, body.text, doors);
    return "findings" in answer ? refuse(reply, 422, answer.findings) : reply.send({ output: answer.output });
  });

  app.route<{ Params: { id: string } }>({
    method: ["GET", "PUT", "PATCH", "DELETE"],
    url: "/api/calc/:id",
    handler: (request, reply) =>
      findDoor(request.params.id, doors) === null
        ? refuse(reply, 404, [unknownDoorFinding(request.params.id, doors)])
        : refuse(reply.header("allow", "POST"), 405, [otherMethodFinding(request.method, "POST")]),
  });
};
