import type { HeardRemark } from "#casework";
import { OfferedSymptoms } from "./symptom-rows.tsx";

interface NotTakenUpProps {
  readonly remarks: readonly HeardRemark[];
  readonly full: boolean;
  readonly onAdd: (id: string) => void;
}

/** Everything the owner said that no complaint has been chosen for, each with what it sounds like, one tap away. */
export const NotTakenUp = ({ remarks, full, onAdd }: NotTakenUpProps) => {
  const left = remarks.filter(({ isHeard }) => !isHeard);
  const known = left.filter(({ offered }) => offered.length > 0);
  const unknown = left.filter(({ offered }) => offered.length === 0);
  return (
    <>
      {known.length === 0 ? null : (
        <section>
          <h2>The words sound like</h2>
          {known.map(({ words, offered }) => (
            <div key={words} className="remark">
              {remarks.length === 1 ? null : <p className="label">“{words}”</p>}
              <OfferedSymptoms offered={offered} full={full} onAdd={onAdd} />
            </div>
          ))}
        </section>
      )}
      {unknown.length === 0 ? null : (
        <p className="label enquiry-none">
          No complaint of the list sounds like {unknown.map(({ words }) => `“${words}”`).join(", ")}. What is a
          complaint can be chosen from the whole list; else the owner's page says that it was not taken up.
        </p>
      )}
    </>
  );
};
