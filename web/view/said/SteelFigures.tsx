/** Figures of the steel with their ranges, what owes the range of growth, and what would narrow it. */
import type { ReactNode } from 'react';
import { accountText } from '@hoopwright/report/steel';
import { say } from '@hoopwright/report/figure';
import type { SteelAnswer } from '@hoopwright/wire/evidence';
import { useManner } from '../../state/manner.ts';
import { useSteel } from '../../state/server/steel.ts';
import { words } from '../../words/say.ts';
import { NineOfTen } from './Span.tsx';
import { Term } from './Term.tsx';

export function SteelFigures({ answer }: { readonly answer: SteelAnswer }) {
  const told = answer.curve.filter(({ plastic_percent: p }) => TOLD.has(p));
  const manner = useManner();
  return (
    <dl className="lines">
      {told.map(({ plastic_percent: p, stress_MPa: stress }) => (
        <Line key={p} label={words('stressAt', { strain: say(manner, 'strain', p / 100) })}>
          <NineOfTen quantity="stress" span={stress} one={1} />
        </Line>
      ))}
      <Line label={<Term name="biaxial" />}>
        <NineOfTen quantity="ratio" span={answer.biaxialFactor} one={1} />
      </Line>
      <Line label={words('wallOfBarrel')}>
        <NineOfTen quantity="wall" span={answer.wall_mm} one={1} />
      </Line>
      <Line label={words('seamOverPlate')}>
        <NineOfTen quantity="ratio" span={answer.seamStrength} one={1} />
      </Line>
      <Line label={words('rollingStrain')}>
        <NineOfTen quantity="strain" span={answer.coldWork_percent} one={0.01} />
      </Line>
    </dl>
  );
}

/** Plastic strains told in figures, percent. */
const TOLD = new Set([0.2, 1, 2, 5, 10]);

const Line = ({ label, children }: { readonly label: ReactNode; readonly children: ReactNode }) => (
  <>
    <dt>{label}</dt>
    <dd>{children}</dd>
  </>
);

export function Assumed({ evidence }: { readonly evidence: SteelAnswer['evidence'] }) {
  const manner = useManner();
  const assumed = evidence.filter(({ kind }) => kind === 'assumed');
  if (assumed.length === 0) return null;
  return (
    <>
      <h2>{words('assumedTitle')}</h2>
      <ul className="account">
        {assumed.map((piece) => (
          <li key={accountText(piece, manner)}>{accountText(piece, manner)}</li>
        ))}
      </ul>
    </>
  );
}

export function Narrower() {
  const stretch = useSteel((s) => s.range?.stretch ?? undefined);
  const manner = useManner();
  if (stretch === undefined) return null;
  const share = (x: number): string => say(manner, 'share', x);
  return (
    <div className="two">
      <div>
        <h2>{words('owesTitle')}</h2>
        <dl className="lines">
          {stretch.shares.map(({ name, percent }) => (
            <Line key={name} label={name}>
              {share(percent / 100)}
            </Line>
          ))}
          <Line label={words('owesTogether')}>{share(stretch.unexplained_percent / 100)}</Line>
        </dl>
      </div>
      <div>
        <h2>{words('nextTitle')}</h2>
        <dl className="lines">
          {stretch.next.map(({ measure, width }) => (
            <Line key={measure} label={measure}>
              {words('nextWidth', { share: share(width) })}
            </Line>
          ))}
        </dl>
      </div>
    </div>
  );
}
