/** Takes a photo with the tablet's camera, or takes a file, and hands it to the host at once. */
import { type ChangeEvent, useState } from 'react';
import { RequestRefused } from '../../../client/request-refused.ts';
import { fileUrl, putFile } from '../../../client/transport.ts';
import { useClient } from '../../../client/use-app.ts';
import { ErrorNote } from '../../../kit/notice.tsx';
import css from './photo-taker.module.css';

export type Photo = Readonly<{ sha256: string; takenAt: string }>;

export function PhotoTaker({
  photos,
  onPhotos,
}: {
  photos: readonly Photo[];
  onPhotos: (photos: readonly Photo[]) => void;
}) {
  const client = useClient();
  const [error, setError] = useState<RequestRefused | null>(null);
  const [working, setWorking] = useState(false);

  async function take(event: ChangeEvent<HTMLInputElement>) {
    const file = event.target.files?.[0];
    event.target.value = '';
    if (!file) return;
    setError(null);
    setWorking(true);
    try {
      const { sha256 } = await putFile(file);
      onPhotos([...photos, { sha256, takenAt: client.now() }]);
    } catch (thrown) {
      if (!(thrown instanceof RequestRefused)) throw thrown;
      setError(thrown);
    } finally {
      setWorking(false);
    }
  }

  return (
    <div className={css.photos}>
      <label className={css.take}>
        {working ? 'keeping the photo...' : 'Photo'}
        <input type="file" accept="image/*" capture="environment" onChange={(event) => void take(event)} />
      </label>
      {photos.map((photo, n) => (
        <img key={photo.sha256} src={fileUrl(photo.sha256)} alt={`Taken now, ${n + 1}`} />
      ))}
      <ErrorNote error={error} />
    </div>
  );
}
