import type { Finding } from "#numeric";

/** Larger than any document of this program; the reader of the text refuses far fewer values than fit in it. */
export const largestInputBytes = 64 * 1024 * 1024;

/** What is said of bytes that are not UTF-8. */
export const notUtf8Finding: Finding = {
  code: "not-utf-eight",
  path: "",
  got: "bytes that are not UTF-8",
  needed: "JSON in UTF-8",
  hint: "Save the text as UTF-8 and send it again.",
};

/** What is said of more bytes than are read. */
export const inputTooLargeFinding: Finding = {
  code: "input-too-large",
  path: "",
  got: `more than ${largestInputBytes / 1024 / 1024} MB`,
  needed: `at most ${largestInputBytes / 1024 / 1024} MB`,
  hint: "Ask in several smaller inputs.",
};
