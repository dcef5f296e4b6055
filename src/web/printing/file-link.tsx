import { type ReactNode, useEffect, useState } from "react";

interface FileLinkProps {
  readonly text: string;
  /** Media type of the text. */
  readonly type: string;
  readonly fileName: string;
  readonly children: ReactNode;
}

/** Hands a text made here to the browser as a file. */
export const FileLink = ({ text, type, fileName, children }: FileLinkProps) => {
  const [address, setAddress] = useState<string>();
  useEffect(() => {
    const made = URL.createObjectURL(new Blob([text], { type }));
    setAddress(made);
    return () => URL.revokeObjectURL(made);
  }, [text, type]);
  return (
    <a href={address} download={fileName}>
      {children}
    </a>
  );
};
