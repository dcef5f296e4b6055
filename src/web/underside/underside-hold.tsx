import { getRouteApi, Outlet, useNavigate } from "@tanstack/react-router";
import { useKeptMarks } from "./use-kept-marks.ts";

const route = getRouteApi("/families/$familyId/underside");

const Hold = ({ familyId }: { readonly familyId: string }) => {
  const { marks } = route.useSearch();
  const navigate = useNavigate();
  const bring = (kept: string) =>
    void navigate({ to: ".", search: (last: Record<string, unknown>) => ({ ...last, marks: kept }), replace: true });
  return useKeptMarks(familyId, marks, bring) ? <Outlet /> : null;
};

/** Holds the sheets of one underside, whole car and corners, over the marks this browser keeps of the car line. */
export const UndersideHold = () => {
  const { familyId } = route.useParams();
  return <Hold key={familyId} familyId={familyId} />;
};
