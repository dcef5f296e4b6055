import { createHash } from "node:crypto";
import { mkdir, readdir, readFile, rm } from "node:fs/promises";
import { join } from "node:path";
import type { FamilyStore, KeptFamily, SaveOutcome } from "#casework";
import { familyEnding } from "./data-folder.ts";
import { isAbsent, writeWholeFile } from "./durable-files.ts";

const unfinished = ".part";
const allowedId = /^[a-z0-9]+(-[a-z0-9]+)*$/;

const versionOf = (text: string): string => createHash("sha256").update(text).digest("hex").slice(0, 16);

class FamilyFiles implements FamilyStore {
  private readonly folder: string;
  private queue: Promise<unknown> = Promise.resolve();
  private serial = 0;

  constructor(folder: string) {
    this.folder = folder;
  }

  async list(): Promise<readonly KeptFamily[]> {
    const names = (await readdir(this.folder)).filter((name) => name.endsWith(familyEnding) && !name.startsWith("."));
    const ids = names.map((name) => name.slice(0, -familyEnding.length)).filter((id) => allowedId.test(id));
    const families = await Promise.all(ids.toSorted().map((id) => this.load(id)));
    return families.filter((family) => family !== null);
  }

  async load(id: string): Promise<KeptFamily | null> {
    try {
      const text = await readFile(this.pathOf(id), "utf8");
      return { id, text, version: versionOf(text) };
    } catch (problem) {
      if (isAbsent(problem)) return null;
      throw problem;
    }
  }

  save(id: string, text: string, seen: string | null): Promise<SaveOutcome> {
    const turn = this.queue.then(() => this.saveInTurn(id, text, seen));
    this.queue = turn.catch(() => undefined);
    return turn;
  }

  private async saveInTurn(id: string, text: string, seen: string | null): Promise<SaveOutcome> {
    const current = await this.load(id);
    if (current?.text === text) return { kind: "kept", version: current.version };
    if ((current?.version ?? null) !== seen) return { kind: "superseded", current };
    this.serial++;
    const half = join(this.folder, `.${id}${familyEnding}.${process.pid}-${this.serial}${unfinished}`);
    await writeWholeFile(half, this.pathOf(id), text);
    return { kind: "kept", version: versionOf(text) };
  }

  private pathOf(id: string): string {
    if (!allowedId.test(id)) throw new Error(`Not an id of a family: ${JSON.stringify(id)}`);
    return join(this.folder, `${id}${familyEnding}`);
  }
}

/**
 * Opens a folder (made if it is not there) in which each family is one JSON file, written whole or not at all.
 * What a killed process left unfinished is removed. One process at a time may write to a folder.
 */
export const openFamilyFiles = async (folder: string): Promise<FamilyStore> => {
  await mkdir(folder, { recursive: true });
  const left = (await readdir(folder)).filter((name) => name.startsWith(".") && name.endsWith(unfinished));
  await Promise.all(left.map((name) => rm(join(folder, name), { force: true })));
  return new FamilyFiles(folder);
};
