/** The fields of the title block, and of the first person. */
import { Choice } from '../../../kit/choice.tsx';
import { Field } from '../../../kit/field.tsx';
import { Suggest } from '../../../kit/suggest.tsx';
import { CURRENCIES, initialsOf, type ShopTyped } from '../first-run-text.ts';
import css from './shop-fields.module.css';

type FieldsProps = Readonly<{
  shop: ShopTyped;
  set: (changes: Partial<ShopTyped>) => void;
  errors: Readonly<Record<string, string>>;
}>;

export function ShopFields({ shop, set, errors }: FieldsProps) {
  const typed = shop.currencyCode.toLocaleLowerCase();
  const offered = CURRENCIES.filter(([code, words]) => `${code} ${words}`.toLowerCase().includes(typed));
  return (
    <div className={css.fields}>
      <div className={css.whole}>
        <Field label="Shop name" value={shop.name} onChange={(name) => set({ name })} error={errors.name} autoFocus />
      </div>
      <div className={css.whole}>
        <Field label="Address" value={shop.address} onChange={(address) => set({ address })} error={errors.address} />
      </div>
      <Field label="Phone" type="tel" value={shop.phone} onChange={(phone) => set({ phone })} error={errors.phone} />
      <Field
        label="Tax number"
        placeholder="can wait"
        value={shop.taxNumber}
        onChange={(taxNumber) => set({ taxNumber })}
        error={errors.taxNumber}
      />
      <Suggest
        label="Currency"
        text={shop.currencyCode}
        onText={(currencyCode) => set({ currencyCode })}
        options={offered.map(([code, words, sign]) => ({
          key: code,
          words: `${words}, ${code}`,
          value: [code, sign] as const,
        }))}
        onPick={([currencyCode, currencySign]) => set({ currencyCode, currencySign })}
        error={errors.currencyCode}
      />
      <Field
        label="Currency sign"
        value={shop.currencySign}
        onChange={(currencySign) => set({ currencySign })}
        error={errors.currencySign}
      />
      <Choice
        label="Units you say out loud"
        options={[
          { value: 'inch', words: 'inch, thou' },
          { value: 'metric', words: 'mm' },
        ]}
        value={shop.units}
        onChange={(units) => set({ units })}
      />
      <Choice
        label="Paper"
        options={[
          { value: 'letter', words: 'Letter' },
          { value: 'a4', words: 'A4' },
        ]}
        value={shop.paper}
        onChange={(paper) => set({ paper })}
      />
    </div>
  );
}

export function FirstPersonFields({
  shop,
  set,
  errors,
  pin,
  setPin,
}: FieldsProps & Readonly<{ pin: string; setPin: (pin: string) => void }>) {
  return (
    <div className={css.fields}>
      <Field
        label="Your name"
        value={shop.personName}
        onChange={(personName) => set({ personName })}
        error={errors.personName}
      />
      <div className={css.two}>
        <Field
          label="Initials"
          value={shop.personInitials}
          placeholder={initialsOf(shop.personName)}
          maxLength={4}
          onChange={(personInitials) => set({ personInitials })}
          error={errors.personInitials}
        />
        <Field
          label="PIN"
          type="password"
          inputMode="numeric"
          value={pin}
          onChange={(text) => setPin(text.replace(/\D/g, '').slice(0, 8))}
          error={errors.pin}
          hint="4 to 8 digits, no run, not all alike"
        />
      </div>
    </div>
  );
}
