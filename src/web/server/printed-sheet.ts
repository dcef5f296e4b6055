/** A printed sheet: the PDF and the name it is kept under. */
export interface PrintedSheet {
  readonly pdf: Blob;
  readonly fileName: string;
}

const FILE_NAME = /filename="([^"]+)"/;

/** The PDF of an answer under the name the server gives it, or under the one given here. */
export const readPrintedSheet = async (response: Response, otherwise: string): Promise<PrintedSheet> => ({
  pdf: await response.blob(),
  fileName: FILE_NAME.exec(response.headers.get("content-disposition") ?? "")?.[1] ?? otherwise,
});

/** Hands the PDF to the browser as a file and returns an address under which it can be opened again. */
export const saveSheet = ({ pdf, fileName }: PrintedSheet): string => {
  const address = URL.createObjectURL(pdf);
  const link = document.createElement("a");
  link.href = address;
  link.download = fileName;
  link.click();
  return address;
};
