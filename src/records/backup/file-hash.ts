import { createHash } from "node:crypto";
import { createReadStream } from "node:fs";

/** SHA-256 of bytes or of a text in UTF-8, hexadecimal. */
export const hashOf = (content: Uint8Array | string): string => createHash("sha256").update(content).digest("hex");

/** SHA-256 of a file, hexadecimal. */
export const hashFile = async (path: string): Promise<string> => {
  const sha = createHash("sha256");
  for await (const piece of createReadStream(path)) sha.update(piece as Uint8Array);
  return sha.digest("hex");
};
