import type { EnquiryDocument, SuspectWord } from "#casework";

const EMPTY: EnquiryDocument = { words: "", symptoms: [], use: null };

/** An enquiry with one more word on a suspect; what was said before stays on record. */
export const sayOfSuspect = (enquiry: EnquiryDocument | null, word: SuspectWord): EnquiryDocument => {
  const standing = enquiry ?? EMPTY;
  return { ...standing, suspects: [...(standing.suspects ?? []), word] };
};

/** Everything that was said of one cause, the last first. */
export const saidOf = (enquiry: EnquiryDocument | null, cause: string): readonly SuspectWord[] =>
  (enquiry?.suspects ?? []).filter((word) => word.cause === cause).toReversed();

/** A word as it is read. */
export const WORDS: Readonly<Record<SuspectWord["word"], string>> = {
  accepted: "Accepted as the cause",
  "ruled-out": "Ruled out",
  open: "Taken back",
};
