import { useEffect, useState } from "react";
import { photoKey } from "../unsent/entry.ts";
import { loadPhoto } from "../unsent/photo-shelf.ts";
import { useOutbox } from "../unsent/workshop-outbox.ts";

/** One photo of a place that waits in this browser; nothing of it is at the store yet. */
const WaitingPhoto = ({ hash, name }: { readonly hash: string; readonly name: string }) => {
  const [address, setAddress] = useState<string | null>(null);
  useEffect(() => {
    let made: string | null = null;
    let gone = false;
    void loadPhoto(hash).then((photo) => {
      if (photo === null || gone) return;
      made = URL.createObjectURL(photo);
      setAddress(made);
    });
    return () => {
      gone = true;
      if (made !== null) URL.revokeObjectURL(made);
    };
  }, [hash]);
  return (
    <figure className="photo-waiting">
      {address === null ? null : <img src={address} alt={name} className="photo" />}
      <figcaption className="note">{name}: kept in this browser, not yet at the store</figcaption>
    </figure>
  );
};

/** One photo on record; where its bytes have not come to the store, it says so. */
const StoredPhoto = ({ hash, number }: { readonly hash: string; readonly number: number }) => {
  const [missing, setMissing] = useState(false);
  if (missing) return <p className="note">Photo {number} is not at the store.</p>;
  return (
    <a href={`/api/photos/${hash}`} target="_blank" rel="noreferrer">
      <img
        src={`/api/photos/${hash}`}
        alt={`${number} of this place`}
        className="photo"
        onError={() => setMissing(true)}
      />
    </a>
  );
};

/** Photos of a place by their hashes, each as the store has it or as it waits in this browser. */
export const PlacePhotos = ({ photos }: { readonly photos: readonly string[] }) => {
  const { entries } = useOutbox();
  return photos.map((hash, index) => {
    const waits = entries.get(photoKey(hash));
    return waits?.what === "photo" ? (
      <WaitingPhoto key={hash} hash={hash} name={waits.name} />
    ) : (
      <StoredPhoto key={hash} hash={hash} number={index + 1} />
    );
  });
};
