/** Which casting it is: type, metal, side, numbers. The metal is a required answer. */
import type { App } from '#core/app-contract.ts';
import type { DrawnKind } from '#core/drawing/drawn-type.ts';
import type { OutputOf } from '#core/kernel/contract.ts';
import { useAppQuery, useClient } from '../../../../client/use-app.ts';
import { Choice, Tick } from '../../../../kit/choice.tsx';
import { Field } from '../../../../kit/field.tsx';
import { Suggest } from '../../../../kit/suggest.tsx';
import { KIND_WORDS } from '../changes.ts';
import { foundTypes } from '../find-type.ts';
import type { Troubles } from '../request.ts';
import type { CastingTyped, DescribedTyped, ItemTyped, Position } from '../typed.ts';
import css from './casting-identity.module.css';

type TypeRow = OutputOf<App['operations/list-casting-types']>['types'][number];
type Picked = Readonly<{ type: TypeRow } | { describe: DrawnKind }>;

export type CastingPartProps = Readonly<{
  casting: CastingTyped;
  change: (changes: Partial<CastingTyped>) => void;
  troubles: Troubles;
}>;

export function CastingIdentity({ casting, change, troubles }: CastingPartProps) {
  const wrong = (place: string) => troubles[`${casting.key}.${place}`];
  return (
    <div className={css.fields}>
      <TypeField casting={casting} change={change} troubles={troubles} />
      {casting.described && (
        <DescribedFields described={casting.described} onChange={(described) => change({ described })} />
      )}
      <div className={css.wide}>
        <Choice
          label="Metal"
          options={[
            { value: 'iron_grey', words: 'Iron' },
            { value: 'aluminium', words: 'Aluminium' },
            { value: 'steel', words: 'Steel' },
            { value: 'other', words: 'Other' },
            { value: 'not_known', words: 'Not known' },
          ]}
          value={casting.material === 'iron_ductile' ? 'iron_grey' : casting.material}
          onChange={(material) => change({ material })}
          error={wrong('material')}
        />
        <Tick
          label="magnet held: bare casting, two places, away from seat inserts, liners, studs and steel cups"
          checked={casting.magnet}
          onChange={(magnet) => change({ magnet })}
        />
      </div>
      <div className={css.wide}>
        <Choice<Position>
          label="Side"
          options={[
            { value: 'left', words: 'left' },
            { value: 'right', words: 'right' },
            { value: 'front_bank', words: 'front' },
            { value: 'rear_bank', words: 'rear' },
            { value: 'single', words: 'single' },
            { value: 'not_known', words: 'not known' },
          ]}
          value={casting.position}
          onChange={(position) => change({ position })}
          error={wrong('position')}
        />
      </div>
      <Field
        label="Casting no., ? where unreadable"
        value={casting.castingNumber}
        onChange={(castingNumber) => change({ castingNumber })}
        error={wrong('castingNumber')}
      />
      <Field
        label="Tag, if stamped before"
        placeholder="next"
        inputMode="numeric"
        value={casting.tagNo}
        onChange={(tagNo) => change({ tagNo })}
        error={wrong('tagNo')}
      />
      <ShopStampField casting={casting} change={change} troubles={troubles} />
      <Field
        label="Other stamps on it"
        value={casting.earlierStamps}
        onChange={(earlierStamps) => change({ earlierStamps })}
        error={wrong('earlierStamps')}
      />
      <Field
        label="Their own marks"
        placeholder="paint L, tray order"
        value={casting.ownMarks}
        onChange={(ownMarks) => change({ ownMarks })}
        error={wrong('ownMarks')}
      />
      <Field
        label="How it is dressed"
        placeholder="manifold on, sensors on"
        value={casting.dress}
        onChange={(dress) => change({ dress })}
        error={wrong('dressWords')}
      />
      <div className={css.ticks}>
        <Tick
          label="came assembled"
          checked={casting.cameAssembled}
          onChange={(cameAssembled) => change({ cameAssembled })}
        />
        <Tick label="bare" checked={casting.bare} onChange={(bare) => change({ bare })} />
        <Tick
          label="close tolerance"
          checked={casting.closeTolerance}
          onChange={(closeTolerance) => change({ closeTolerance })}
        />
        <Tick label="tag only, no stamp" checked={casting.tagOnly} onChange={(tagOnly) => change({ tagOnly })} />
      </div>
    </div>
  );
}

export function TypeField({ casting, change, troubles }: CastingPartProps) {
  const client = useClient();
  const types = useAppQuery('operations/list-casting-types', {}).data?.types ?? [];
  const take = async (picked: Picked) => {
    if ('describe' in picked) {
      change({
        type: null,
        typeId: null,
        kind: picked.describe,
        described: emptyDescribed(picked.describe),
        items: [],
      });
      return;
    }
    const { type } = picked;
    change({ typeText: type.name, type: type.code, typeId: type.id, kind: type.kind, described: null });
    const list = await client.call('intake/get-arrival-list', { type: type.code });
    change({ items: list.items.map((item): ItemTyped => ({ ...EMPTY_ITEM, ...item })) });
  };
  const options = casting.type === null ? foundTypes(types, casting.typeText) : [];
  return (
    <div className={css.wide}>
      <Suggest<Picked>
        label="Casting type"
        placeholder="name, engine or casting number"
        text={casting.typeText}
        onText={(typeText) => change({ typeText, type: null, typeId: null, described: casting.described })}
        options={[
          ...options.map((type) => ({
            key: type.code,
            words: type.name,
            note: [type.engineType?.words, KIND_WORDS[type.kind]?.toLowerCase()].filter(Boolean).join(', '),
            value: { type },
          })),
          ...(casting.type === null && casting.described === null
            ? DESCRIBED_KINDS.map((kind) => ({
                key: `describe-${kind}`,
                words: `Describe it: ${KIND_WORDS[kind]?.toLowerCase()}`,
                note: 'not in the catalogue',
                value: { describe: kind },
              }))
            : []),
        ]}
        onPick={(picked) => void take(picked)}
        error={troubles[`${casting.key}.type`]}
        autoFocus={casting.typeText === ''}
      />
    </div>
  );
}

const DESCRIBED_KINDS: readonly DrawnKind[] = [
  'head',
  'block',
  'crank',
  'flywheel',
  'rod_set',
  'intake_manifold',
  'exhaust_manifold',
  'cover',
];

const EMPTY_ITEM: ItemTyped = {
  words: '',
  expected: null,
  counted: null,
  mixRule: 'none',
  removeBeforeWash: false,
  inside: false,
  own: false,
  numbersSeen: false,
  arrowsSeen: false,
  boltedInPlace: false,
  more: '',
  box: null,
};

const emptyDescribed = (kind: DrawnKind): DescribedTyped => ({
  kind,
  camLayout: kind === 'head' ? 'ohv' : 'none',
  fuel: 'petrol',
  cylinders: '',
  intakeValves: '',
  exhaustValves: '',
  mains: '',
});

function DescribedFields({
  described,
  onChange,
}: {
  described: DescribedTyped;
  onChange: (described: DescribedTyped) => void;
}) {
  const set = (changes: Partial<DescribedTyped>) => onChange({ ...described, ...changes });
  return (
    <div className={css.described}>
      <Field
        label="Cylinders"
        inputMode="numeric"
        value={described.cylinders}
        onChange={(cylinders) => set({ cylinders })}
      />
      {described.kind === 'head' && (
        <>
          <Field
            label="Intake valves"
            inputMode="numeric"
            value={described.intakeValves}
            onChange={(intakeValves) => set({ intakeValves })}
          />
          <Field
            label="Exhaust valves"
            inputMode="numeric"
            value={described.exhaustValves}
            onChange={(exhaustValves) => set({ exhaustValves })}
          />
          <div className={css.wide}>
            <Choice
              label="Cam"
              options={[
                { value: 'none', words: 'none' },
                { value: 'side', words: 'side' },
                { value: 'ohv', words: 'in block' },
                { value: 'sohc', words: 'one over' },
                { value: 'dohc', words: 'two over' },
              ]}
              value={described.camLayout}
              onChange={(camLayout) => set({ camLayout })}
            />
          </div>
        </>
      )}
      {described.kind === 'block' && (
        <Field label="Mains" inputMode="numeric" value={described.mains} onChange={(mains) => set({ mains })} />
      )}
      <div className={css.wide}>
        <Choice
          label="Fuel"
          options={[
            { value: 'petrol', words: 'petrol' },
            { value: 'diesel', words: 'diesel' },
            { value: 'gas', words: 'gas' },
            { value: 'other', words: 'other' },
          ]}
          value={described.fuel}
          onChange={(fuel) => set({ fuel })}
        />
      </div>
    </div>
  );
}

/** Our own stamp of an earlier visit: says which visits it had, and whether one with it stands here now. */
function ShopStampField({ casting, change, troubles }: CastingPartProps) {
  const stamp = casting.shopStamp.trim();
  const visits =
    useAppQuery('castings/list-visits', { stamp: stamp || '-' }, { enabled: stamp !== '' }).data?.visits ?? [];
  const here = visits.find((visit) => visit.inHouse);
  const last = visits[0];
  const said = here
    ? `Tag ${here.tagNo} here carries it too: both are held until it is clear which is which.`
    : last && `Was here on ticket ${last.ticketNumber}, tag ${last.tagNo}.`;
  return (
    <Field
      label="Our stamp"
      value={casting.shopStamp}
      onChange={(shopStamp) => change({ shopStamp })}
      error={troubles[`${casting.key}.shopStamp`]}
      hint={said}
    />
  );
}
