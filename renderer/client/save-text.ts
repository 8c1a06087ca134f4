/** Keeps a text as a file: where the person says on the desktop, among the downloads of a browser. */
import { notReached, RequestRefused } from './request-refused.ts';

export type TextFile = Readonly<{ fileName: string; mime: string; text: string }>;

/** @returns whether it was saved; a browser does not tell, and counts as saved @throws RequestRefused */
export async function saveText(file: TextFile): Promise<boolean> {
  if (window.benchtag) {
    const reply = await window.benchtag
      .call({ name: 'desktop/save-text', input: { name: file.fileName, text: file.text } })
      .catch(() => {
        throw notReached();
      });
    if (!reply.ok) throw new RequestRefused(reply.error);
    const { output } = reply;
    return typeof output === 'object' && output !== null && 'saved' in output && typeof output.saved === 'string';
  }
  const address = URL.createObjectURL(new Blob([file.text], { type: file.mime }));
  const link = document.createElement('a');
  link.href = address;
  link.download = file.fileName;
  document.body.append(link);
  link.click();
  link.remove();
  // The browser reads the text after the click has returned.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
  return true;
}
