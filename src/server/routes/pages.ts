import fastifyStatic from "@fastify/static";
import type { FastifyInstance } from "fastify";

/**
 * The pages load nothing from elsewhere; the plan's solver is compiled to WebAssembly; drawings set styles on their own
 * elements, the PDF is shown from memory.
 */
const contentSecurityPolicy = [
  "default-src 'self'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data: blob:",
  "font-src 'self' data:",
  "worker-src 'self' blob:",
  "frame-src 'self' blob:",
  "object-src 'self' blob:",
  "base-uri 'none'",
  "form-action 'self'",
  "frame-ancestors 'none'",
].join("; ");

const oneYear = "public, max-age=31536000, immutable";

/** Serves the built pages; an address without a file is a page of the program and gets its index. */
export const addPages = (app: FastifyInstance, folder: string): void => {
  app.register(fastifyStatic, {
    root: folder,
    index: false,
    wildcard: false,
    cacheControl: false,
    setHeaders: (reply, path) => {
      reply.header("cache-control", path.includes("/assets/") ? oneYear : "no-cache");
    },
  });
  app.get("/", (_request, reply) => reply.sendFile("index.html"));
  app.get("/*", (request, reply) => {
    const page = request.headers.accept?.includes("text/html") === true && !request.url.startsWith("/api/");
    return page ? reply.sendFile("index.html") : reply.callNotFound();
  });
  app.addHook("onSend", async (_request, reply) => {
    reply.headers({
      "content-security-policy": contentSecurityPolicy,
      "x-content-type-options": "nosniff",
      "referrer-policy": "no-referrer",
    });
  });
};
