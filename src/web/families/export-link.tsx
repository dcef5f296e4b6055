import { FileLink } from "../printing/file-link.tsx";
import type { LoadedFamily } from "../server/families.ts";

/** Hands the family's file to the browser, byte for byte as it is kept. */
export const ExportLink = ({ loaded }: { readonly loaded: LoadedFamily }) => (
  <FileLink text={loaded.text} type="application/json" fileName={`${loaded.family.id}.json`}>
    Family file
  </FileLink>
);
