import { Choice } from "../../underside/choice.tsx";
import { useCase } from "../case/case-context.tsx";

/** What differs inside the family: which one stands here, and whether that is known or guessed. */
export const VariantChoices = () => {
  const { family, car, change } = useCase();
  const variants = family?.family.variants ?? [];
  if (variants.length === 0) return <p className="label">No variants are on file for this car line.</p>;
  const entryOf = (label: string) => car.variants.find((one) => one.label === label) ?? null;
  const set = (label: string, choice: string | null, known: boolean) =>
    change("car", (body) => {
      const rest = (body ?? car).variants.filter((one) => one.label !== label);
      return { ...(body ?? car), variants: choice === null ? rest : [...rest, { label, choice, known }] };
    });
  return (
    <>
      {variants.map(({ label, key, choices }) => {
        const chosen = entryOf(label);
        return (
          <fieldset key={label} className="mark-entry">
            <legend className="margin-title">{label}</legend>
            <p className="note">told by {key}</p>
            <div className="choices">
              {choices.map((choice) => {
                const holds = chosen?.choice === choice.label;
                return (
                  <Choice
                    key={choice.label}
                    chosen={holds}
                    onChoose={() => set(label, holds ? null : choice.label, false)}
                  >
                    {choice.label}
                    <span className="note">{choice.code}</span>
                  </Choice>
                );
              })}
            </div>
            {chosen === null ? (
              <p className="note">not said yet</p>
            ) : (
              <p className="variant-known">
                <span className="label">{chosen.known ? "Known" : "Guessed"}</span>
                <button type="button" className="link" onClick={() => set(label, chosen.choice, !chosen.known)}>
                  {chosen.known ? "It is a guess" : "Seen on the car: it is known"}
                </button>
              </p>
            )}
          </fieldset>
        );
      })}
    </>
  );
};
