import { FileLink } from "./file-link.tsx";

interface CsvLinkProps {
  readonly text: string;
  /** Of the file, without its ending. */
  readonly name: string;
}

/** Hands lines to the browser as a file of comma-separated values. */
export const CsvLink = ({ text, name }: CsvLinkProps) => (
  <FileLink text={text} type="text/csv" fileName={`${name}.csv`}>
    Lines as CSV
  </FileLink>
);
