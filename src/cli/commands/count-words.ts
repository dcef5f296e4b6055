import type { ArchiveTally } from "#contract";

const counted = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

/** How much there is, in words: "3 versions of documents, 1 look, 0 families, 2 photos". */
export const countWords = ({ documents, looks, families, photos }: ArchiveTally): string =>
  [
    counted(documents, "version of a document", "versions of documents"),
    counted(looks, "look", "looks"),
    counted(families, "family", "families"),
    counted(photos, "photo", "photos"),
  ].join(", ");
