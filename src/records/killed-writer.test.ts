import { spawn } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { openFamilyFiles } from "./family-files.ts";

/** Saves ever longer documents one after the other and says on its output which one has been acknowledged. */
const writer = (folder: string): string => `
  import { openFamilyFiles } from ${JSON.stringify(new URL("./family-files.ts", import.meta.url).href)};
  const store = await openFamilyFiles(${JSON.stringify(folder)});
  let seen = (await store.load("a"))?.version ?? null;
  for (let n = 1; ; n++) {
    const kept = await store.save("a", JSON.stringify({ n, filling: "x".repeat(200_000) }), seen);
    seen = kept.version;
    process.stdout.write(n + "\\n");
  }
`;

describe("a writer killed at any moment", () => {
  let folder: string;
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), "killed-"));
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  it("loses nothing it has acknowledged and leaves no half document", { timeout: 60_000 }, async () => {
    for (const delay of [15, 40, 65, 90]) {
      const program = spawn(process.execPath, ["--import", "tsx", "--input-type=module", "-e", writer(folder)]);
      let acknowledged = 0;
      const begun = new Promise<void>((resolve) => {
        program.stdout.on("data", (chunk: Buffer) => {
          acknowledged = Number(chunk.toString("utf8").trim().split("\n").at(-1));
          resolve();
        });
      });
      const ended = new Promise((resolve) => program.once("close", resolve));
      await Promise.race([begun, ended]);
      await wait(delay);
      program.kill("SIGKILL");
      await ended;
      const kept = JSON.parse(readFileSync(join(folder, "a.family.json"), "utf8")) as { readonly n: number };
      expect(kept.n).toBeGreaterThanOrEqual(acknowledged);
      expect(acknowledged).toBeGreaterThan(0);
      rmSync(join(folder, "a.family.json"));
    }
    await openFamilyFiles(folder);
    expect(readdirSync(folder)).toEqual([]);
  });
});
