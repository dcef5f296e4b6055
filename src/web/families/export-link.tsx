import { useEffect, useState } from "react";
import type { LoadedFamily } from "../server/families.ts";

/** Hands the family's file to the browser, byte for byte as it is kept. */
export const ExportLink = ({ loaded }: { readonly loaded: LoadedFamily }) => {
  const [address, setAddress] = useState<string>();
  useEffect(() => {
    const made = URL.createObjectURL(new Blob([loaded.text], { type: "application/json" }));
    setAddress(made);
    return () => URL.revokeObjectURL(made);
  }, [loaded.text]);
  return (
    <a href={address} download={`${loaded.family.id}.json`}>
      Family file
    </a>
  );
};
