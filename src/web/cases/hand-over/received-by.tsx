import { useId, useState } from "react";

interface ReceivedByProps {
  readonly value: string | null;
  readonly onChange: (name: string | null) => void;
}

/** Who took the car over. */
export const ReceivedBy = ({ value, onChange }: ReceivedByProps) => {
  const id = useId();
  const [text, setText] = useState(value ?? "");
  const keep = () => {
    const name = text.trim() === "" ? null : text.trim();
    if (name !== value) onChange(name);
  };
  return (
    <div className="field received-by">
      <label htmlFor={id}>Received by</label>
      <span className="field-entry">
        <input
          id={id}
          type="text"
          autoComplete="off"
          value={text}
          onChange={(event) => setText(event.target.value)}
          onBlur={keep}
        />
      </span>
    </div>
  );
};
