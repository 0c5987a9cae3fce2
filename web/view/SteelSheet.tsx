/** The sheet of the steel: what the tests say of it, what each piece did, what to measure next. */
import { accountText } from '@hoopwright/report/steel';
import { useQueries } from '@tanstack/react-query';
import { SteelCurve } from '../chart/SteelCurve.tsx';
import { useBoard } from '../state/board.ts';
import { couponBytes, type CouponRow, couponRows } from '../state/server/coupons.ts';
import { valueAt } from '../state/file/edit.ts';
import { useManner } from '../state/manner.ts';
import { hasEvidence, useSteel } from '../state/server/steel.ts';
import { couponView } from '../state/server/threads.ts';
import type { CouponView } from '../work/couponView.ts';
import { words } from '../words/say.ts';
import { Certificate } from './field/Certificate.tsx';
import { Coupons } from './table/Coupons.tsx';
import { Assumed, Narrower, SteelFigures } from './said/SteelFigures.tsx';
import { SteelBooks, SteelFound } from './said/SteelFound.tsx';
import { SteelWords } from './said/SteelWords.tsx';
import { StatedFlow } from './field/StatedFlow.tsx';
import { TitleBlock } from './said/TitleBlock.tsx';

export function SteelSheet() {
  const draft = useBoard((b) => b.draft);
  const answer = useSteel((s) => s.answer);
  const manner = useManner();
  const rows = couponRows(draft);
  const views = useCouponViews(rows);
  return (
    <main className="sheet steel-sheet">
      <SteelWords />
      {valueAt(draft, 'steel.flow') === undefined ? null : <StatedFlow />}
      <div className="beside">
        {answer === undefined || !hasEvidence(draft) ? null : (
          <div className="curve-and-figures">
            <SteelCurve curve={answer.curve} measured={dotsOf(rows, views)} />
            <SteelFigures answer={answer} />
            <SteelFound answer={answer} />
          </div>
        )}
        <div className="evidence">
          <h2>{words('evidenceTitle')}</h2>
          <ul className="account">
            {(answer?.evidence ?? [])
              .filter(({ kind }) => kind !== 'assumed')
              .map((piece) => (
                <li key={accountText(piece, manner)} className={piece.kind === 'excluded' ? 'excluded' : ''}>
                  {accountText(piece, manner)}
                </li>
              ))}
          </ul>
          <Assumed evidence={answer?.evidence ?? []} />
          <Narrower />
        </div>
      </div>
      <Coupons rows={rows} views={views} />
      <Certificate />
      {answer === undefined || !hasEvidence(draft) ? null : <SteelBooks answer={answer} />}
      <TitleBlock type={words('typeSteel')} sheet="2" />
    </main>
  );
}

/** Figures and drawing of every coupon, kept until its entry changes. */
function useCouponViews(rows: readonly CouponRow[]): readonly (CouponView | undefined)[] {
  const project = useBoard((b) => b.project?.id);
  const manner = useManner();
  const answers = useQueries({
    queries: rows.map(({ entry }) => ({
      queryKey: ['coupon', project, entry, manner],
      enabled: project !== undefined,
      queryFn: async (): Promise<CouponView | null> => {
        const bytes = await couponBytes(project ?? '', entry.file);
        return bytes === undefined ? null : couponView(bytes, entry, manner);
      },
    })),
  });
  return answers.map(({ data }) => data ?? undefined);
}

/** Every so many of a measured curve are drawn. */
const DOTS = 40;

const dotsOf = (rows: readonly CouponRow[], views: readonly (CouponView | undefined)[]) =>
  rows.flatMap(({ kind, entry }, i) => {
    const curve = views[i]?.answer.trueCurve;
    if (
      kind !== 'coupons' ||
      curve === undefined ||
      entry.excluded !== undefined ||
      views[i]?.answer.usable !== true
    )
      return [];
    const step = Math.max(1, Math.floor(curve.plastic.length / DOTS));
    const dots = curve.plastic
      .map((plastic, k) => ({ plastic, stress: curve.stress_MPa[k] }))
      .filter((dot, k) => k % step === 0 && dot.plastic > 0);
    return [{ name: entry.file, dots }];
  });
