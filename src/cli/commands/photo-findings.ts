import type { Finding } from "#contract";

/** Said of photos that are no longer what they were when they came. */
export const damagedPhotoFindings = (hashes: readonly string[]): readonly Finding[] =>
  hashes.map((hash) => ({
    code: "photo-damaged",
    path: "",
    got: `a photo whose bytes are no longer ${hash}`,
    needed: "the bytes as they came",
    hint: "It was left out; everything else is there. An older backup may have it whole.",
  }));
