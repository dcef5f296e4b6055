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
  if (left.length === 0) return null;
  return (
    <section>
      <h2>The words sound like</h2>
      {left.map(({ words, offered }) => (
        <div key={words} className="remark">
          {remarks.length === 1 ? null : <p className="label">“{words}”</p>}
          {offered.length === 0 ? (
            <p className="note">
              No complaint of the list sounds like it. Choose one from the whole list, or it stands on the owner's page
              as not taken up.
            </p>
          ) : (
            <OfferedSymptoms offered={offered} full={full} onAdd={onAdd} />
          )}
        </div>
      ))}
    </section>
  );
};
