import { useId } from "react";

interface FileInputProps {
  readonly label: string;
  readonly onFile: (file: File) => void;
}

/** Chooses a file to read in; the same file can be chosen again at once. */
export const FileInput = ({ label, onFile }: FileInputProps) => {
  const id = useId();
  return (
    <div className="file-input">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type="file"
        accept=".json,application/json"
        onChange={(event) => {
          const [file] = event.target.files ?? [];
          event.target.value = "";
          if (file !== undefined) onFile(file);
        }}
      />
    </div>
  );
};
