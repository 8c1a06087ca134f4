import { describe, expect, it } from 'vitest';
import { drawAddedWork } from '#core/sheets/added-work-sheet.ts';
import { havePaperHead, havePapers } from '#tests/kit/papers.ts';
import { fonts, ONE_POINT, picturesIn, textOf } from '#tests/kit/pdf.ts';
import { lacks } from '#tests/kit/programs.ts';

const papers = havePapers(havePaperHead());
type Paper = (typeof papers)['added-work'];
const draw = (changes: Partial<Paper> = {}) => drawAddedWork(fonts, { ...papers['added-work'], ...changes });

/** A PNG whose packed points do not meet their check sum. */
const DAMAGED =
  'iVBORw0KGgoAAAANSUhEUgAAAAoAAAAKCAYAAACNMs+9AAAAFUlEQVR42mNk+M9Qz0AEYBxVSF+FABJADveWkH6oAAAAAElFTkSuQmCC';

describe.skipIf(lacks('pdftotext'))('drawAddedWork', () => {
  it('shows each way with its extra, the new total and the new date', async () => {
    const text = textOf(await draw());

    for (const words of ['326.72', '1,599.07', 'Tue 16 March, 16:30', '874.38', 'Yes to a', 'Yes to d'])
      expect(text).toContain(words);
  });

  it('shows the reading beside its limit and how the cost to stop comes from what is done', async () => {
    const text = textOf(await draw());

    expect(text).toContain('weeps at 40 psi');
    expect(text).toContain('no leak, 10 min');
    expect(text).toContain('Done and ordered so far');
    expect(text).toContain('412.29');
    expect(text).toContain('If we hear nothing, work on both heads waits');
  });

  it('carries the photo, and says so when a photo cannot be read', async () => {
    const photo = await draw({ photo: ONE_POINT });
    const broken = await draw({ photo: Buffer.from('not a picture').toString('base64') });

    expect(picturesIn(photo)).toBeGreaterThan(0);
    expect(picturesIn(broken)).toBe(0);
    expect(textOf(broken)).toContain('The picture cannot be read.');
  });

  it('draws the paper all the same when the points of a picture are damaged', async () => {
    const damaged = await draw({ photo: DAMAGED });

    expect(textOf(damaged)).toContain('The picture cannot be read.');
    expect(textOf(damaged)).toContain('326.72');
  });

  it('has a strip for an answer given by telephone', async () => {
    expect(textOf(await draw())).toContain('Answered by phone or message, filled in by the shop');
  });
});
