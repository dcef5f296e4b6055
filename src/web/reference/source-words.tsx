import { SourceLink } from "../shell/source-link.tsx";
import { sourceKeys } from "./source-keys.ts";
import { splitByKeys } from "./sources.ts";

/** The source line of a figure; each key in it opens its entry. */
export const SourceWords = ({ line }: { readonly line: string }) => {
  let place = 0;
  return splitByKeys(line, sourceKeys).map(({ text, isKey }) => {
    const at = place;
    place += text.length;
    return isKey ? <SourceLink key={at} source={text} /> : <span key={at}>{text}</span>;
  });
};
