import { Link } from "@tanstack/react-router";
import { useEffect, useState } from "react";
import { FamilyThumbnail } from "../../families/family-thumbnail.tsx";
import { LAYOUT_WORDS } from "../../families/layout-words.ts";
import { type FamilyLine, listFamilies } from "../../server/family-list.ts";
import { useCase } from "../case/case-context.tsx";

const yearsOf = (line: Exclude<FamilyLine, { findings: unknown }>): string =>
  [line.from_year, line.to_year].filter((year) => year !== undefined).join(" to ");

interface FamilyChoiceProps {
  readonly onChosen: () => void;
}

/** Families of the workshop to choose from; null until the list has come. */
const useFamilies = (): readonly FamilyLine[] | null => {
  const [lines, setLines] = useState<readonly FamilyLine[] | null>(null);
  useEffect(() => {
    let wanted = true;
    void listFamilies().then((answer) => {
      if (wanted) setLines(answer.kind === "answer" ? answer.body : []);
    });
    return () => {
      wanted = false;
    };
  }, []);
  return lines;
};

/** Chooses the car line: one on file, or one begun right here from the silhouettes of its axles. */
export const FamilyChoice = ({ onChosen }: FamilyChoiceProps) => {
  const { car, visitId, change } = useCase();
  const lines = useFamilies();
  // Invented lines never stand under a real car.
  const offered = (lines ?? []).filter(
    (line) =>
      !("findings" in line) &&
      (!line.off_list || line.id === car.family) &&
      (car.invented || !(line.invented && line.read_only)),
  );
  const choose = (id: string) => {
    change("car", (body) => ({
      ...(body ?? car),
      family: id,
      variants: id === car.family ? (body ?? car).variants : [],
    }));
    onChosen();
  };
  return (
    <div className="family-choice">
      <div className="family-begin">
        <div>
          <p className="lead">Not on file?</p>
          <p className="label">
            Its silhouette is enough: tap the layout of both axles. What is left blank is assumed and says so, and can
            be put right later.
          </p>
        </div>
        <Link to="/families/begin" search={{ visit: visitId }} className="press">
          Begin from its silhouette
        </Link>
      </div>
      {offered.length === 0 ? (
        <p className="label">{lines === null ? "" : "No car line of your own is on file yet."}</p>
      ) : (
        <ul className="family-lines">
          {offered.map((line) =>
            "findings" in line ? null : (
              <li key={line.id}>
                <button type="button" className="family-line" onClick={() => choose(line.id)}>
                  <FamilyThumbnail id={line.id} />
                  <span>
                    <strong>{line.name}</strong>
                    <span className="label">{yearsOf(line)}</span>
                    <span className="label">
                      {LAYOUT_WORDS[line.front.layout]} front, {LAYOUT_WORDS[line.rear.layout]} rear
                    </span>
                    <span className="note">{line.invented ? "invented" : ""}</span>
                  </span>
                </button>
              </li>
            ),
          )}
        </ul>
      )}
    </div>
  );
};
