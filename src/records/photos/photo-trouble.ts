import type { LargestPhotoBytes } from "#casework";
import { noSpaceTrouble, RecordsTrouble } from "../records-trouble.ts";

/** The bound of the port: no other number has its type. */
export const largestPhotoBytes: LargestPhotoBytes = 41_943_040;

const largestWords = `${largestPhotoBytes / 1024 / 1024} MB`;

/** Said of more bytes than a photo may have. */
export const photoTooLarge = (got: string): RecordsTrouble =>
  new RecordsTrouble({
    code: "photo-too-large",
    path: "",
    got,
    needed: `a photo of at most ${largestWords}`,
    hint: "Nothing was kept. Send the photo in a smaller size; films are not kept.",
  });

/** Said of bytes that are no photo. */
export const notAPhoto = (got: string): RecordsTrouble =>
  new RecordsTrouble({
    code: "not-a-photo",
    path: "",
    got,
    needed: "a JPEG, PNG or WebP photo, told by its first bytes",
    hint: "The name of a file does not count. Open it in a picture viewer; if it shows there, save it as JPEG and send that.",
  });

/** Said of a phone's own format. */
export const phoneFormat = (): RecordsTrouble =>
  new RecordsTrouble({
    code: "photo-heic",
    path: "",
    got: "a HEIC or AVIF photo, as phones save them to use less space",
    needed: "a JPEG, PNG or WebP photo",
    hint: "In the phone's camera settings look for the format of photos and choose JPEG, on some phones called most compatible instead of high efficiency. Photos already taken: share or export them as JPEG.",
  });

const codeOf = (problem: unknown): string =>
  problem instanceof Error && "code" in problem && typeof problem.code === "string" ? problem.code : "";

const diskCodes = new Set([
  "EACCES",
  "EPERM",
  "EROFS",
  "EIO",
  "ENOTDIR",
  "EEXIST",
  "EISDIR",
  "EMFILE",
  "ENFILE",
  "EFBIG",
]);

/** What is wrong where the folder of photos does not take a photo; null where it is a fault of ours. */
export const photoTrouble = (problem: unknown): RecordsTrouble | null => {
  const code = codeOf(problem);
  if (code === "ENOSPC" || code === "EDQUOT") return noSpaceTrouble("a photo to keep", problem);
  if (!diskCodes.has(code)) return null;
  return new RecordsTrouble(
    {
      code: "photo-not-kept",
      path: "",
      got: `a folder of photos that cannot be used (${code})`,
      needed: "the folder photos in the data folder, on a working disk, that may be written to",
      hint: "The photo was not kept; looks are kept as ever. Put the folder right and send the photo again.",
    },
    problem,
  );
};
