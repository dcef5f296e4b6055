/** The same place on the other side; null where a place belongs to an axle as a whole. */
export function twinPlace(place: string): string | null {
  if (/^(front|rear)-left\//.test(place)) return place.replace("-left/", "-right/");
  if (/^(front|rear)-right\//.test(place)) return place.replace("-right/", "-left/");
  return null;
}
