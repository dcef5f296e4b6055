import { useEffect, useState } from "react";
import type { Family } from "../car.ts";
import { SmallCar } from "../scene/small-car.tsx";
import { loadShownFamily } from "../server/families.ts";

/** The underside of a family of the list, once its sheet has come; it is named beside. */
export const FamilyThumbnail = ({ id }: { readonly id: string }) => {
  const [family, setFamily] = useState<Family | null>(null);
  useEffect(() => {
    let wanted = true;
    void loadShownFamily(id).then((answer) => {
      if (wanted && answer.kind === "answer") setFamily(answer.body.family);
    });
    return () => {
      wanted = false;
    };
  }, [id]);
  return <div className="family-thumbnail">{family === null ? null : <SmallCar family={family} />}</div>;
};
