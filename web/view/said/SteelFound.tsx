/** What was found beside the range: rolling, seams, what standards and mills say, and how far the range can be trusted. */
import { booksText, quickText, reachText, rollingText, STEEL_ENGLISH } from '@hoopwright/report/steel';
import { seamText } from '@hoopwright/report/coupon';
import type { SteelAnswer } from '@hoopwright/wire/evidence';
import { useManner } from '../../state/manner.ts';
import { useSteel } from '../../state/server/steel.ts';
import { words } from '../../words/say.ts';

export function SteelFound({ answer }: { readonly answer: SteelAnswer }) {
  const manner = useManner();
  const stretch = useSteel((s) => s.range?.stretch ?? undefined);
  const found = [
    ...(answer.rolling === null ? [] : [rollingText(answer.rolling, manner)]),
    ...answer.seams.map(({ name, seam }) => `${name}: ${seamText(seam, manner)}.`),
  ];
  return (
    <>
      {found.length === 0 ? null : <h2>{words('foundTitle')}</h2>}
      <Lines of={found} />
      <h2>{words('trustTitle')}</h2>
      <Lines
        of={[
          ...(stretch === undefined ? [] : [reachText(manner), quickText(stretch, manner)]),
          STEEL_ENGLISH.proves,
        ]}
      />
    </>
  );
}

export function SteelBooks({ answer }: { readonly answer: SteelAnswer }) {
  const manner = useManner();
  const [title, ...lines] = booksText(answer.plate.grade, answer.plate.form, manner);
  return (
    <section>
      <h2>{title}</h2>
      <Lines of={lines} />
    </section>
  );
}

const Lines = ({ of }: { readonly of: readonly string[] }) =>
  of.length === 0 ? null : (
    <ul className="account">
      {of.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  );
