import { useEffect, useRef, useState } from "react";
import { keepMarks, keepSetAside, loadKeptMarks, loadSetAside, withAside } from "./kept-marks.ts";

/**
 * Keeps the marks of an address in this browser while a sheet of the car line is open. On arrival the address counts: one
 * without marks takes up those kept here, one with others sets those kept here aside.
 * @param bring puts marks into the address, without a step of history
 * @returns false until it is decided which marks the sheet begins with
 */
export const useKeptMarks = (familyId: string, marks: string | undefined, bring: (marks: string) => void): boolean => {
  const [arrived, setArrived] = useState(false);
  const bringing = useRef(false);
  // biome-ignore lint/correctness/useExhaustiveDependencies: decided once, on arrival at this car line
  useEffect(() => {
    const kept = loadKeptMarks(familyId);
    if (kept !== "" && marks === undefined) {
      bringing.current = true;
      bring(kept);
    } else if (kept !== "" && kept !== marks)
      keepSetAside(familyId, withAside(loadSetAside(familyId), { why: "address", marks: kept }));
    setArrived(true);
  }, [familyId]);
  useEffect(() => {
    if (marks !== undefined) bringing.current = false;
    if (arrived && !bringing.current) keepMarks(familyId, marks ?? "");
  }, [arrived, familyId, marks]);
  return arrived && !(bringing.current && marks === undefined);
};
