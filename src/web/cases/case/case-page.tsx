import { getRouteApi } from "@tanstack/react-router";
import { CaseHold } from "./case-context.tsx";

const route = getRouteApi("/cases/$visit");

/** The pages of one visit, over everything on record about it. */
export const CasePage = () => {
  const loaded = route.useLoaderData();
  return <CaseHold key={loaded.visitId} loaded={loaded} />;
};
