import { Link } from "@tanstack/react-router";
import { useEffect, useState } from "react";
import { findNearest } from "#contract";
import { type FamilyLine, listShownFamilies } from "../server/family-list.ts";

/** The car line whose id or name is nearest to what was asked for; null until the list has come, or where none is near. */
const useNearest = (asked: string): FamilyLine | null => {
  const [nearest, setNearest] = useState<FamilyLine | null>(null);
  useEffect(() => {
    let wanted = true;
    void listShownFamilies().then((answer) => {
      if (!wanted || answer.kind !== "answer") return;
      const lines = [...answer.body.families, ...answer.body.examples];
      const id = findNearest(
        asked,
        lines.map((line) => line.id),
      );
      setNearest(lines.find((line) => line.id === id) ?? null);
    });
    return () => {
      wanted = false;
    };
  }, [asked]);
  return nearest;
};

/** Says that there is no car line of this id, which is nearest to it, and where others may lie. */
export const NearestFamily = ({ asked }: { readonly asked: string }) => {
  const nearest = useNearest(asked);
  return (
    <div className="nowhere">
      <p className="lead">There is no car line “{asked}” in this workshop.</p>
      {nearest === null ? null : (
        <p>
          The nearest is{" "}
          <Link to="/families/$familyId" params={{ familyId: nearest.id }}>
            {nearest.name}
          </Link>
          .
        </p>
      )}
      <p className="label">
        Each data folder has car lines of its own. One that was begun in another folder is read in here from its family
        file; a car that names it keeps everything else on record.
      </p>
    </div>
  );
};
