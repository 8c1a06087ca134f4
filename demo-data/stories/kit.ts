/** What a story is told with: the clock on the wall of the shop, people by initials, castings by tag. */
import type { App, RequestName } from '#core/app-contract.ts';
import { localTime } from '#core/host/clock.ts';
import type { InputOf, OutputOf } from '#core/kernel/contract.ts';
import { moment } from '#core/kernel/days.ts';
import { type Replay, send } from '../replay.ts';
import type { Baton } from './baton.ts';
import { readPicture } from './pictures.ts';

const ZONE = 'America/New_York';
const MS_A_MINUTE = 60_000;

/** The UTC moment at which the shop's clock shows `2027-03-02 07:40`. @throws RangeError for a time the clock skips. */
export function momentOf(wall: string): string {
  const [day = '', time = ''] = wall.split(' ');
  const wanted = Number(time.slice(0, 2)) * 60 + Number(time.slice(3, 5));
  const asUtc = Date.parse(`${day}T${time}:00.000Z`);
  for (const hours of [4, 5]) {
    const guess = new Date(asUtc + hours * 60 * MS_A_MINUTE).toISOString();
    const shown = localTime(moment(guess), ZONE);
    if (shown.day === day && shown.minute === wanted) return guess;
  }
  throw new RangeError(`the shop's clock never shows ${wall}`);
}

export type Story = Readonly<{
  /** Go on at this time of the wall clock. */
  at(wall: string): Promise<void>;
  send<N extends RequestName>(name: N, input: InputOf<App[N]>, who: string): Promise<OutputOf<App[N]>>;
  /** Send a request that the program must refuse; the story tells how it is caught. @returns the code */
  refused<N extends RequestName>(name: N, input: InputOf<App[N]>, who: string): Promise<string>;
  customer(name: string): Promise<{ customerId: number; personId: number | null }>;
  /** The bench page of a tag. */
  bench(tag: number): Promise<OutputOf<App['floor/get-bench']>>;
  /** Start an operation and finish it at another time; what happens between is told in `between`. */
  work(
    tag: number,
    code: string,
    who: string,
    times: readonly [from: string, until: string],
    between?: () => Promise<void>,
  ): Promise<void>;
  /** Readings of one casting; `code` names the open operation they belong to. */
  read(tag: number, stage: 'before' | 'after', rows: readonly Reading[], who: string, code?: string): Promise<void>;
  /** A picture taken at the counter or the bench. */
  photo(tag: number, caption: string, who: string, stage?: 'arrival' | 'finding' | 'done'): Promise<void>;
  /** Catalogue ids by code. */
  kindId(code: string): Promise<number>;
  packageId(code: string): Promise<number>;
  stockId(code: string): Promise<number>;
}>;

export type Reading = Readonly<{
  quantity: string;
  spot?: string;
  /** Kind of the place where it is no valve: a port may be called as its valve is. */
  kind?: 'port';
  point?: string;
  typed: string;
  unit?: string;
  tool?: string;
}>;

/** @param order place among the stories, for moments that are equal */
export function makeStory(replay: Replay, baton: Baton, order: number): Story {
  const tell = <N extends RequestName>(name: N, input: InputOf<App[N]>, who: string) => send(replay, name, input, who);
  const idIn = (rows: readonly { code: string; id: number }[], code: string): number => {
    const found = rows.find((row) => row.code === code);
    if (!found) throw new Error(`the catalogue has no ${code}`);
    return found.id;
  };
  const bench = (tag: number) => tell('floor/get-bench', { tag }, 'DK');
  const operation = async (tag: number, code: string) => {
    const { operations } = await bench(tag);
    const found = operations.find((o) => o.kindCode === code && o.mark !== 'done' && o.mark !== 'off');
    if (!found)
      throw new Error(`${tag} has no open ${code}: ${operations.map((o) => `${o.kindCode} ${o.word}`).join(', ')}`);
    return { operationId: found.id, seenVersion: found.version };
  };
  const at = (wall: string): Promise<void> => baton.until(momentOf(wall), order);
  return {
    at,
    send: tell,
    async refused(name, input, who) {
      const reply = await replay.ask(name, input, who);
      if (reply.ok) throw new Error(`${name} was to be refused and was not`);
      return reply.error.code;
    },
    async customer(name) {
      const { customers } = await tell('customers/find-customer', { text: name }, 'TV');
      const found = customers[0];
      if (!found) throw new Error(`no customer ${name}`);
      return { customerId: found.customerId, personId: found.personId };
    },
    bench,
    async work(tag, code, who, [from, until], between) {
      await at(from);
      await tell('floor/start-operation', { operations: [await operation(tag, code)] }, who);
      await between?.();
      await at(until);
      await tell('floor/finish-operation', { operations: [await operation(tag, code)] }, who);
    },
    async read(tag, stage, rows, who, code) {
      const page = await bench(tag);
      const { spots } = await tell('operations/get-casting-type', { castingType: page.castingTypeId }, who);
      const tools = rows.some((r) => r.tool) ? await tell('tools/list-tools', {}, who) : [];
      await tell(
        'readings/add-readings',
        {
          casting: page.castingId,
          operation: code === undefined ? null : (await operation(tag, code)).operationId,
          rows: rows.map((r) => ({
            quantity: r.quantity,
            spot:
              r.spot === undefined
                ? null
                : (spots.find((s) => s.label === r.spot && s.kind === (r.kind ?? 'valve'))?.id ??
                  spots.find((s) => s.label === r.spot)?.id ??
                  null),
            point: r.point ?? null,
            stage,
            typed: r.typed,
            unit: (r.unit ?? null) as never,
            tool: r.tool === undefined ? null : (tools.find((t) => t.name === r.tool)?.id ?? null),
          })),
        },
        who,
      );
    },
    async photo(tag, caption, who, stage = 'arrival') {
      const page = await bench(tag);
      await tell(
        'photos/add-photo',
        { ticketId: page.ticketId, castingId: page.castingId, stage, caption, file: readPicture(page.kind) },
        who,
      );
    },
    kindId: async (code) => idIn((await tell('operations/list-kinds', {}, 'TV')).kinds, code),
    packageId: async (code) => idIn((await tell('operations/list-packages', {}, 'TV')).packages, code),
    stockId: async (code) => idIn((await tell('operations/list-stock', {}, 'TV')).stock, code),
  };
}
