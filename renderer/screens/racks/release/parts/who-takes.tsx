/** Who takes it, by which proof, and the signature after the count. */
import { useState } from 'react';
import { RequestRefused } from '../../../../client/request-refused.ts';
import { putFile } from '../../../../client/transport.ts';
import { Choice, Tick } from '../../../../kit/choice.tsx';
import { Field } from '../../../../kit/field.tsx';
import { ErrorNote } from '../../../../kit/notice.tsx';
import { Signature } from '../../../../kit/signature.tsx';
import { Suggest } from '../../../../kit/suggest.tsx';
import { type Change, type Proof, type ReleasePage, type ReleaseTyped, wantsUnworked } from '../release-typed.ts';

export type Signed = Readonly<{ sha256: string | null; onPaper: boolean }>;

export function WhoTakes({
  page,
  typed,
  change,
  signed,
  onSigned,
  errors,
}: {
  page: ReleasePage;
  typed: ReleaseTyped;
  change: Change;
  signed: Signed;
  onSigned: (signed: Signed) => void;
  errors: Readonly<Record<string, string>>;
}) {
  const [refused, setRefused] = useState<RequestRefused | null>(null);
  const keep = async (png: Blob | null) => {
    setRefused(null);
    try {
      onSigned({ onPaper: false, sha256: png ? (await putFile(png)).sha256 : null });
    } catch (thrown) {
      if (!(thrown instanceof RequestRefused)) throw thrown;
      setRefused(thrown);
    }
  };
  const name = typed.takenBy.trim();
  const looked = name.toLowerCase();
  return (
    <>
      <Suggest
        label="Who takes it"
        text={typed.takenBy}
        onText={(takenBy) => change({ takenBy, personId: null })}
        options={page.persons
          .filter((one) => one.name.toLowerCase().includes(looked) && one.name !== name)
          .map((one) => ({
            key: one.personId,
            words: one.name,
            note: one.mayCollect ? 'may collect' : 'may not collect without the claim ticket',
            value: one,
          }))}
        onPick={(one) => change({ takenBy: one.name, personId: one.personId })}
        error={errors.takenBy ?? errors.personId}
        hint={`May collect: ${
          page.persons
            .filter((one) => one.mayCollect)
            .map((one) => one.name)
            .join(', ') || 'nobody is named'
        }`}
      />
      <Choice<Proof>
        label="By which proof"
        options={[
          { value: 'claim_ticket', words: 'claim ticket' },
          { value: 'identity', words: 'identity paper' },
          { value: 'known', words: 'known to us' },
        ]}
        value={typed.proof}
        onChange={(proof) => change({ proof })}
        error={errors.proof}
      />
      {typed.proof === 'identity' && (
        <Field
          label="Which paper"
          value={typed.proofWords}
          onChange={(proofWords) => change({ proofWords })}
          error={errors.proofWords}
        />
      )}
      {wantsUnworked(page.rows, typed) && (
        <Field
          label="Why it leaves without its sign-off"
          value={typed.unworkedWhy}
          onChange={(unworkedWhy) => change({ unworkedWhy })}
          error={errors.unworkedWhy}
        />
      )}
      <p>I have received the pieces counted here. I have seen the build sheet.</p>
      {!signed.onPaper && (
        <Signature
          label={name === '' ? 'They sign here after the count' : `${name} signs here after the count`}
          onSigned={(png) => void keep(png)}
        />
      )}
      <Tick
        label="Signed on paper"
        checked={signed.onPaper}
        onChange={(onPaper) => onSigned({ onPaper, sha256: null })}
      />
      <ErrorNote error={refused} />
    </>
  );
}
