import { useId } from "react";
import "./choice.css";

interface ChoiceProps {
  readonly label: string;
  readonly value: string;
  readonly options: readonly { readonly value: string; readonly words: string }[];
  readonly disabled?: boolean;
  readonly onChoose: (value: string) => void;
}

/** A setting chosen from a few, its name before it. */
export const Choice = ({ label, value, options, disabled = false, onChoose }: ChoiceProps) => {
  const id = useId();
  return (
    <span className="pick">
      <label htmlFor={id}>{label}</label>
      <select id={id} value={value} disabled={disabled} onChange={(event) => onChoose(event.target.value)}>
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.words}
          </option>
        ))}
      </select>
    </span>
  );
};
