import { getRouteApi } from "@tanstack/react-router";
import { CopyFirstPage } from "./copy-first-page.tsx";
import { FamilyEditor } from "./family-editor.tsx";

const route = getRouteApi("/families/$familyId/edit");

/** The data of a car line: the editor of one's own, or the way to a copy of one that comes with the program. */
export const EditPage = () => {
  const edited = route.useLoaderData();
  const search = route.useSearch();
  return edited.kind !== "own" ? (
    <CopyFirstPage key={edited.id} edited={edited} />
  ) : (
    <FamilyEditor key={edited.id} edited={edited} search={search} />
  );
};
