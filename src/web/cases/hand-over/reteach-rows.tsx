import type { HandOverDocument, ReteachItem } from "#casework";

type State = HandOverDocument["taught"][number]["state"];

const CHOICES: readonly { readonly state: State; readonly words: string }[] = [
  { state: "done", words: "Done" },
  { state: "not-needed", words: "Not needed" },
  { state: "look-up", words: "Looked up" },
];

interface ReteachRowsProps {
  readonly items: readonly ReteachItem[];
  readonly onSay: (item: string, state: State) => void;
}

/** What may have to be taught anew or aimed, why, and what became of it; never silence. */
export const ReteachRows = ({ items, onSay }: ReteachRowsProps) => (
  <ul className="gate-rows">
    {items.map((item) => (
      <li key={item.item} className="reteach-row" data-need={item.need}>
        <span className="found-what">
          <span className="found-name">{item.item}</span>
          <span className="label">
            {item.need}; {item.why}
          </span>
        </span>
        <fieldset className="reteach-choices" aria-label={item.item}>
          {CHOICES.map(({ state, words }) => (
            <button
              key={state}
              type="button"
              className="choice"
              aria-pressed={item.state === state}
              onClick={() => onSay(item.item, state)}
            >
              {words}
            </button>
          ))}
        </fieldset>
      </li>
    ))}
  </ul>
);
