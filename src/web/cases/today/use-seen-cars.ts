import { useEffect, useState } from "react";
import { type CarLine, loadSeenCar, type SeenCar } from "./load-today.ts";

/** What has been seen of each car, by its id; a car comes in as its records are read, one after the other. */
export const useSeenCars = (lines: readonly CarLine[]): ReadonlyMap<string, SeenCar> => {
  const [seen, setSeen] = useState<ReadonlyMap<string, SeenCar>>(new Map());
  useEffect(() => {
    let gone = false;
    const read = async () => {
      for (const line of lines) {
        const car = await loadSeenCar(line);
        if (gone) return;
        if (car !== null) setSeen((last) => new Map(last).set(line.id, car));
      }
    };
    void read();
    return () => {
      gone = true;
    };
  }, [lines]);
  return seen;
};
