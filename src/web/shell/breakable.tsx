import { Fragment } from "react";

/** A path or a long word that may go on in the next line behind its own marks, and nowhere else. */
export const Breakable = ({ text }: { readonly text: string }) => {
  const parts = text.split(/(?<=[._/,\]-])/);
  let at = 0;
  return parts.map((part) => {
    at += part.length;
    return (
      <Fragment key={at}>
        {part}
        {at === text.length ? null : <wbr />}
      </Fragment>
    );
  });
};
