/** The coupons: dropped here, each with its figures, its drawing and whether it counts. */
import { type DragEvent, useId, useRef, useState } from 'react';
import { SceneView } from '../../chart/SceneView.tsx';
import {
  addCoupons,
  attachmentName,
  type CouponKind,
  type CouponRow,
  exclude,
  removeCoupon,
} from '../../state/server/coupons.ts';
import { fixed } from '@hoopwright/report/figure';
import { useManner } from '../../state/manner.ts';
import type { CouponView } from '../../work/couponView.ts';
import { words } from '../../words/say.ts';
import { FileField } from '../field/FileField.tsx';
import { Value } from '../said/Figures.tsx';
import { Wide } from './Wide.tsx';

export interface CouponsProps {
  readonly rows: readonly CouponRow[];
  readonly views: readonly (CouponView | undefined)[];
}

export function Coupons({ rows, views }: CouponsProps) {
  return (
    <section aria-label={words('couponsTitle')} className="coupons">
      <h2>{words('couponsTitle')}</h2>
      <div className="two">
        <DropPlace kind="coupons" label={words('dropPlate')} />
        <DropPlace kind="seamCoupons" label={words('dropSeam')} />
      </div>
      {rows.length === 0 ? null : (
        <Wide label={words('couponsTitle')}>
          <table className="figures">
            <caption className="unseen">{words('couponsTitle')}</caption>
            <thead>
              <tr>
                <th scope="col">{words('colCoupon')}</th>
                <th scope="col">{words('colModulus')}</th>
                <th scope="col">{words('colRp02')}</th>
                <th scope="col">{words('colRp10')}</th>
                <th scope="col">{words('colRm')}</th>
                <th scope="col">{words('colAg')}</th>
                <th scope="col">{words('colA')}</th>
                <th scope="col">{words('colCounts')}</th>
              </tr>
            </thead>
            <tbody>
              {rows.map((row, i) => (
                <Row key={`${row.kind} ${row.entry.file}`} row={row} view={views[i]} />
              ))}
            </tbody>
          </table>
        </Wide>
      )}
    </section>
  );
}

function DropPlace({ kind, label }: { readonly kind: CouponKind; readonly label: string }) {
  const id = useId();
  const input = useRef<HTMLInputElement>(null);
  const [over, setOver] = useState(false);
  const [refused, setRefused] = useState<readonly string[]>([]);
  const take = async (files: FileList | null): Promise<void> => {
    if (files !== null) setRefused(await addCoupons([...files], kind));
    if (input.current !== null) input.current.value = '';
  };
  const drop = (event: DragEvent): void => {
    event.preventDefault();
    setOver(false);
    void take(event.dataTransfer.files);
  };
  return (
    <div
      className={`drop${over ? ' over' : ''}`}
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={drop}
    >
      <label htmlFor={id}>{label}</label>
      <input
        ref={input}
        id={id}
        type="file"
        multiple
        accept=".csv,.txt,.tsv,.dat,text/csv,text/plain"
        onChange={(event) => void take(event.target.files)}
      />
      {refused.map((name) => (
        <p key={name} className="fault" role="alert">
          {words('dropTooLarge', { name })}
        </p>
      ))}
    </div>
  );
}

function Row({ row, view }: { readonly row: CouponRow; readonly view: CouponView | undefined }) {
  const [open, setOpen] = useState(false);
  const { entry, kind } = row;
  const answer = view?.answer;
  const counts = answer?.usable === true && entry.excluded === undefined;
  const figure = (value: number | null | undefined, quantity: 'stress' | 'strain', one = 1) => (
    <td>
      <Value quantity={quantity} value={value === null || value === undefined ? undefined : value * one} />
    </td>
  );
  return (
    <>
      <tr className={counts ? '' : 'excluded'} data-coupon={attachmentName(entry.file)}>
        <th scope="row">
          <button type="button" aria-expanded={open} onClick={() => setOpen(!open)}>
            {entry.name ?? attachmentName(entry.file)}
          </button>
          {kind === 'seamCoupons' ? <span className="small">{words('acrossSeam')}</span> : null}
        </th>
        <td>
          <Modulus value={answer?.E_MPa ?? undefined} />
        </td>
        {figure(answer?.Rp02_MPa, 'stress')}
        {figure(answer?.Rp10_MPa, 'stress')}
        {figure(answer?.Rm_MPa, 'stress')}
        {figure(answer?.Ag_percent, 'strain', 0.01)}
        {figure(answer?.A_percent, 'strain', 0.01)}
        <td className="words-cell">
          {view === undefined
            ? words('couponMissing')
            : counts
              ? words('couponCounts')
              : words('couponExcluded')}
        </td>
      </tr>
      {open || (answer !== undefined && !answer.usable) ? (
        <tr className="about">
          <td colSpan={8}>
            <About row={row} view={view} open={open} />
          </td>
        </tr>
      ) : null}
    </>
  );
}

/** In GPa whatever the units: nobody writes a modulus otherwise; ksi where stresses are in ksi. */
function Modulus({ value }: { readonly value: number | undefined }) {
  const manner = useManner();
  if (value === undefined) return <>{words('blockNothing')}</>;
  return manner.units === 'psi' ? (
    <Value quantity="stress" value={value} />
  ) : (
    <>
      {fixed(manner, value / 1000, 0)} <span className="unit">GPa</span>
    </>
  );
}

/** Why it does not count, what was found, how it is read, and its drawing. */
function About({
  row,
  view,
  open,
}: {
  readonly row: CouponRow;
  readonly view: CouponView | undefined;
  readonly open: boolean;
}) {
  const { entry, kind, index } = row;
  const answer = view?.answer;
  const path = `steel.${kind}[${index}]`;
  const issues = answer?.issues ?? [];
  return (
    <div className="about-coupon">
      {entry.excluded === undefined ? null : <p className="strong">{entry.excluded}</p>}
      {view?.verdict === undefined || answer?.usable === true ? null : (
        <p className="strong">{view.verdict}</p>
      )}
      {issues.map((issue) => (
        <p key={issue.path + issue.expected} className="fault">
          {issue.path}: {words('issue', issue)}
        </p>
      ))}
      {open ? (answer?.warnings ?? []).map((warning) => <p key={warning}>{warning}</p>) : null}
      {open || issues.length > 0 ? (
        <div className="two">
          <FileField
            path={`${path}.gaugeLength_mm`}
            quantity="length"
            label={words('couponGauge')}
            otherwise={words('fromFile')}
          />
          <FileField
            path={`${path}.couponWidth_mm`}
            quantity="length"
            label={words('couponWidth')}
            otherwise={words('fromFile')}
          />
          <FileField
            path={`${path}.couponThickness_mm`}
            quantity="wall"
            label={words('couponThickness')}
            otherwise={words('fromFile')}
          />
        </div>
      ) : null}
      {open && view?.scene !== undefined ? (
        <SceneView
          scene={view.scene}
          box={{ left: 0, top: 0, width: view.scene.width, height: view.scene.height }}
          className="coupon"
        />
      ) : null}
      <p>
        {entry.excluded === undefined ? (
          <button type="button" onClick={() => exclude(row, words('excludedByHand'))}>
            {words('couponExclude')}
          </button>
        ) : (
          <button type="button" onClick={() => exclude(row, undefined)}>
            {words('couponInclude')}
          </button>
        )}
        <button type="button" onClick={() => removeCoupon(row)}>
          {words('take')}
        </button>
        <span className="small">{attachmentName(entry.file)}</span>
      </p>
    </div>
  );
}
