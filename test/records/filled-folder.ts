import { openFamilyFiles, openRecords } from "#records";
import { makeFolder } from "./data-folders.ts";
import { inventedCar, inventedVisit, makeLook, receivedAt } from "./made-cases.ts";
import { pngOf } from "./made-photos.ts";

/** A data folder with a car, two versions of it, two visits, looks (one of a wrong clock), photos and a family. */
export const fillFolder = async (): Promise<string> => {
  const folder = makeFolder();
  const { cases, photos, close } = await openRecords(folder);
  const meta = (expectedVersion: number, by = "MK") => ({ expectedVersion, by, at: receivedAt });
  await cases.saveDocument("car", "car-1", inventedCar, meta(0));
  await cases.saveDocument("car", "car-1", { ...inventedCar, name: "Ouzel „Ø“ saloon" }, meta(1, "RB"));
  for (const visit of ["visit-1", "visit-2"]) await cases.saveDocument("visit", visit, inventedVisit, meta(0));
  const step = { step: "s", doneBy: "MK", at: receivedAt, hubToArch: 0.3815, torqueNm: null, note: null };
  await cases.saveDocument("job-card", "visit-1", { steps: [step] }, meta(0));
  const photo = await photos.savePhoto(pngOf(1, 5000));
  await photos.savePhoto(pngOf(2, 40));
  const looks = Array.from({ length: 40 }, (_, n) => makeLook(n, { photo: n === 5 ? photo : null }));
  await cases.appendLooks([...looks, makeLook(40, { at: "2029-01-01T00:00:00Z" })], receivedAt);
  await (await openFamilyFiles(folder)).save("own-line", '{"name": "Ø",\r\n "odd": 1}\n', null);
  await close();
  return folder;
};

/** Everything that stands in a data folder, so that two can be held side by side. */
export const readFolder = async (folder: string) => {
  const { archive, photos, close } = await openRecords(folder);
  const documents: unknown[] = [];
  const looks: unknown[] = [];
  await archive.readAll({
    document: async (document) => void documents.push(document),
    look: async (look) => void looks.push(look),
  });
  const families = (await (await openFamilyFiles(folder)).list()).map(({ id, text }) => [id, text]);
  const kept = await photos.listPhotos();
  await close();
  return { documents, looks, families, photos: kept };
};
