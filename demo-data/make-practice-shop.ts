/** `npm run demo -- <folder>`: makes the practice shop there. */
import { existsSync } from 'node:fs';
import { resolve } from 'node:path';
import { makePracticeShop } from './practice-shop.ts';

const [folder] = process.argv.slice(2);
if (!folder) {
  process.stderr.write('Say where: npm run demo -- <folder>\n');
  process.exitCode = 1;
} else if (existsSync(resolve(folder, 'benchtag.sqlite'))) {
  process.stderr.write(`${resolve(folder)} holds a workspace already. Nothing was changed. Name an empty folder.\n`);
  process.exitCode = 1;
} else {
  await makePracticeShop(resolve(folder));
  process.stdout.write(`The practice shop stands in ${resolve(folder)}\n`);
}
