import { writeFile } from "node:fs/promises";
import type { Finding } from "#contract";

const words: Readonly<Record<string, string>> = {
  EEXIST: "a file that is there already",
  ENOENT: "a folder that is not there",
  EISDIR: "a folder",
  EACCES: "a place that may not be written",
  EROFS: "a disk that is only read",
  ENOSPC: "a disk that is full",
};

/** Writes a file that is not there yet; what keeps it from being written comes back. */
export const saveNewFile = async (path: string, bytes: Uint8Array): Promise<Finding | null> => {
  try {
    await writeFile(path, bytes, { flag: "wx" });
    return null;
  } catch (problem) {
    const code = problem instanceof Error && "code" in problem ? String(problem.code) : "";
    const got = words[code];
    if (got === undefined) throw problem;
    return {
      code: code === "EEXIST" ? "file-exists" : code === "ENOSPC" ? "no-space" : "no-file",
      path: "",
      got: `${got}: ${path}`,
      needed: "the name of a file that is not there yet",
      hint: "",
    };
  }
};
