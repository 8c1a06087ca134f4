/** Pictures of what arrived: still pictures from a file or the camera's own dialog; each is on the host at once. */
import { useId, useState } from 'react';
import { RequestRefused } from '../../../../client/request-refused.ts';
import { fileUrl, putFile } from '../../../../client/transport.ts';
import { Button } from '../../../../kit/button.tsx';
import { ErrorNote } from '../../../../kit/notice.tsx';
import type { PhotoTyped } from '../typed.ts';
import css from './photo-fields.module.css';

export function PhotoFields({
  photos,
  onPhotos,
}: {
  photos: readonly PhotoTyped[];
  onPhotos: (change: (before: readonly PhotoTyped[]) => readonly PhotoTyped[]) => void;
}) {
  const field = useId();
  const [sending, setSending] = useState(0);
  const [error, setError] = useState<RequestRefused | null>(null);
  const take = async (files: readonly File[]) => {
    setError(null);
    for (const file of files) {
      setSending((count) => count + 1);
      try {
        const { sha256 } = await putFile(file);
        onPhotos((before) =>
          before.some((one) => one.sha256 === sha256) ? before : [...before, { sha256, name: file.name }],
        );
      } catch (thrown) {
        if (thrown instanceof RequestRefused) setError(thrown);
        else throw thrown;
      } finally {
        setSending((count) => count - 1);
      }
    }
  };
  return (
    <div className={css.photos}>
      {photos.map((photo) => (
        <figure key={photo.sha256}>
          <img src={fileUrl(photo.sha256)} alt={photo.name} />
          <Button
            label={`Leave out ${photo.name}`}
            onPress={() => onPhotos((before) => before.filter((one) => one.sha256 !== photo.sha256))}
          >
            Leave out
          </Button>
        </figure>
      ))}
      <label htmlFor={field} className={css.add}>
        {sending > 0 ? `Keeping ${sending}...` : 'Add pictures'}
        <input
          id={field}
          type="file"
          accept="image/jpeg,image/png,image/webp"
          multiple
          onChange={(event) => {
            void take([...(event.target.files ?? [])]);
            event.target.value = '';
          }}
        />
      </label>
      <ErrorNote error={error} />
    </div>
  );
}
