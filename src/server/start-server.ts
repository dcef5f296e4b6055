import type { FastifyInstance } from "fastify";
import { buildApp, type ServerParts } from "./app.ts";

/** Where the server is to be found. */
export interface RunningServer {
  readonly address: string;
  readonly stop: () => Promise<void>;
}

/** The only place it listens: this machine itself. */
const host = "127.0.0.1";
const portsTried = 20;

const isTaken = (problem: unknown): boolean =>
  problem instanceof Error && "code" in problem && problem.code === "EADDRINUSE";

const listenOn = async (app: FastifyInstance, port: number): Promise<string | null> => {
  try {
    return await app.listen({ host, port });
  } catch (problem) {
    if (isTaken(problem)) return null;
    throw problem;
  }
};

/** Starts the server on loopback, on the wanted port or the next free one above it (0: any free one). */
export const startServer = async (parts: ServerParts, wanted: number): Promise<RunningServer> => {
  for (let port = wanted; port < wanted + portsTried; port++) {
    const app = await buildApp(parts);
    const address = await listenOn(app, port);
    if (address !== null) return { address, stop: () => app.close() };
    await app.close();
  }
  throw new Error(`Ports ${wanted} to ${wanted + portsTried - 1} are all taken. Set PORT to a free one.`);
};
