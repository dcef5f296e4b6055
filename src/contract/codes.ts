/**
 * Every finding code with what it means, in one table; docs/codes.md is written from it
 * and a test holds it against the codes the source really uses.
 */
export const codes: Readonly<Record<string, string>> = {
  "bad-request": "A request the server cannot read.",
  "duplicate-key": "The same key stands twice in one object.",
  "foreign-host": "A request made under a name that is not this machine's own.",
  "input-too-large": "A body or text larger than 64 MB.",
  "key-unit": "A key is right but for its unit: another unit, or none, stands at its end.",
  "missing-key": "A key that is needed is not there.",
  "no-answer": "The pages got no answer from the program that serves them.",
  "no-file": "A file that is not there or may not be read.",
  "no-input": "There is no text at all.",
  "no-such-address": "Nothing answers at this address.",
  "not-a-number": "NaN or infinity stands where a figure is needed.",
  "not-consistent": "Values that are right one by one do not fit together.",
  "not-json": "The text breaks the grammar of JSON; the finding says where.",
  "not-json-type": "A body that is not sent as application/json.",
  "not-utf-eight": "Bytes that are not UTF-8.",
  "number-too-large": "A figure is larger than any figure of a car in any unit used here (1e9).",
  "our-fault": "The program made a mistake; what was sent is not to blame.",
  "out-of-range": "A figure lies outside the range it is defined on.",
  "too-deep": "Brackets are nested deeper than any document of this program.",
  "too-many-findings": "More findings than are listed; settle these first.",
  "too-many-values": "The text holds more single values than one input may.",
  "unknown-calculation": "No calculation has this id; the nearest is named.",
  "unknown-key": "A key nobody reads; the nearest known one is named where there is one.",
  "unknown-word": "A word that is none of those allowed here; the nearest is named where there is one.",
  usage: "A command line that cannot be understood.",
  "wrong-format": "Text that does not have the form needed.",
  "wrong-length": "A list or text has too few or too many entries.",
  "wrong-type": "A value of another kind than needed: text for a number, a list for an object.",
};
