/** Finish: what the card stands for, what may be estimated and never converted, and how to set the profilometer. */
import { divideRounded } from '../../../kernel/units.ts';
import { cutOffFor } from '../cut-off.ts';
import { cutterPeak, cutterRa, cutterSlopes } from '../geometry/cutter-mark.ts';
import { fromSheet, type Known, type Look, made, madeBy, unknown } from '../look.ts';
import type { Formula } from './formula.ts';

const ESTIMATED = 'estimated: Rz is 4 to 7 times Ra, there is no exact relation';

/** One end of what Rz may be; nothing once Rz itself is measured. */
function rzTimes(look: Look, times: number): Known | null {
  const ra = look.value('finish-ra');
  if (ra?.value == null || look.value('finish-rz')?.value != null) return null;
  return madeBy([[ra, times]], ra.value * times, [ESTIMATED]);
}

/** The Ra to set the profilometer for: what is expected, else aimed at, else allowed, else what was found. */
function expectedRa(look: Look): Known | null {
  const [aim, most] = [look.target('finish-ra'), look.high('finish-ra')];
  return (
    look.either('finish-expected') ??
    (aim === null ? null : fromSheet(aim, 'for the Ra aimed at')) ??
    (most === null ? null : fromSheet(most, 'for the roughest allowed')) ??
    look.value('finish-ra')
  );
}

function setting(look: Look, which: 'cutOff' | 'evaluation'): Known | null {
  const ra = expectedRa(look);
  if (ra?.value == null) return null;
  const found = cutOffFor(ra.value);
  return found ? made([ra], found[which]) : unknown('no cut-off for such a roughness');
}

/** Feed for each turn: as given, else table feed by turns. */
function feedOf(look: Look): Known | null {
  const feed = look.either('cutter-feed');
  const [table, turns] = [look.either('cutter-table-feed'), look.either('cutter-turns')];
  if (feed || table?.value == null || turns?.value == null || turns.value <= 0) return feed;
  return made([table], divideRounded(BigInt(table.value), BigInt(turns.value)));
}

const FROM_CUTTER = 'estimate from feed and nose radius, not measured';

function fromCutter(look: Look, height: (feed: number, radius: number) => number, share: number): Known | null {
  const [feed, nose] = [feedOf(look), look.either('cutter-nose')];
  if (feed?.value == null || nose?.value == null) return null;
  if (nose.value <= 0) return unknown('the nose radius is above 0');
  const slopes = cutterSlopes(feed.value, nose.value);
  return madeBy(
    [
      [feed, slopes.feed * share],
      [nose, slopes.radius * share],
    ],
    height(feed.value, nose.value),
    [FROM_CUTTER],
  );
}

/** Peak to valley is about four times Ra here: 18 sqrt(3) / 8, rounded up for the doubt. */
const PEAK_SHARE = 4;

export const FINISH_FORMULAS: Readonly<Record<string, Formula>> = {
  'finish-ra': (look) => {
    const card = look.value('finish-card');
    return card?.value == null ? null : made([card], card.value, ['compared with a card, not measured']);
  },
  'finish-rz-low': (look) => rzTimes(look, 4),
  'finish-rz-high': (look) => rzTimes(look, 7),
  'finish-cut-off': (look) => setting(look, 'cutOff'),
  'finish-evaluation': (look) => setting(look, 'evaluation'),
  'cutter-ra': (look) => fromCutter(look, cutterRa, 1),
  'cutter-peak': (look) => fromCutter(look, cutterPeak, PEAK_SHARE),
};
