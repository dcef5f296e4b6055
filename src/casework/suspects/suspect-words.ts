import type { SuspectWord } from "../cases/documents.ts";
import type { CarRemedy } from "../cases/remedies.ts";

/** The word that counts on each cause: the last that was said; a cause that is open again has none. */
export function lastWords(said: readonly SuspectWord[]): ReadonlyMap<string, SuspectWord> {
  const last = new Map(said.map((word) => [word.cause, word]));
  for (const [cause, { word }] of last) if (word === "open") last.delete(cause);
  return last;
}

interface WithPlaces {
  readonly label: string;
  readonly places: readonly string[];
  readonly word: SuspectWord | null;
}

/** True where a remedy cures something found at a place where this cause would sit. */
export const isAtPlacesOf = (remedy: Pick<CarRemedy, "findings">, { places }: Pick<WithPlaces, "places">): boolean =>
  remedy.findings.some(({ place }) => places.includes(place));

/** Remedies that cure something at the places of a cause somebody accepted, each with the name of the cause. */
export function acceptedRemedies(
  suspects: readonly WithPlaces[],
  remedies: readonly CarRemedy[],
): ReadonlyMap<string, string> {
  const accepted = suspects.filter(({ word }) => word?.word === "accepted");
  return new Map(
    remedies.flatMap((remedy) => {
      const cause = accepted.find((suspect) => isAtPlacesOf(remedy, suspect));
      return cause === undefined ? [] : [[remedy.id, cause.label] as const];
    }),
  );
}
