import { useEffect, useState } from "react";

interface CsvLinkProps {
  readonly text: string;
  /** Of the file, without its ending. */
  readonly name: string;
}

/** Hands lines to the browser as a file of comma-separated values. */
export const CsvLink = ({ text, name }: CsvLinkProps) => {
  const [address, setAddress] = useState<string>();
  useEffect(() => {
    const made = URL.createObjectURL(new Blob([text], { type: "text/csv" }));
    setAddress(made);
    return () => URL.revokeObjectURL(made);
  }, [text]);
  return (
    <a href={address} download={`${name}.csv`}>
      Lines as CSV
    </a>
  );
};
