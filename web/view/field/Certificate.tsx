/** The mill certificate, typed; the plate as measured; how it was rolled. */
import { useBoard } from '../../state/board.ts';
import { changeDraft } from '../../state/file/change.ts';
import { valueAt, withValue } from '../../state/file/edit.ts';
import { words } from '../../words/say.ts';
import { FileField } from './FileField.tsx';
import { TextField } from './TextField.tsx';

export function Certificate() {
  return (
    <div className="beside forms">
      <section aria-label={words('certificateTitle')}>
        <h2>{words('certificateTitle')}</h2>
        <TextField path="steel.certificate.heat" label={words('certificateHeat')} />
        <TextField path="steel.certificate.plate" label={words('certificatePlate')} />
        <FileField
          path="steel.certificate.Rp02_MPa"
          quantity="stress"
          label={words('certificateRp02')}
          term="proof"
          otherwise={words('notStated')}
        />
        <FileField
          path="steel.certificate.Rp10_MPa"
          quantity="stress"
          label={words('certificateRp10')}
          otherwise={words('notStated')}
        />
        <FileField
          path="steel.certificate.Rm_MPa"
          quantity="stress"
          label={words('certificateRm')}
          term="strength"
          otherwise={words('notStated')}
        />
        <FileField
          path="steel.certificate.A_percent"
          quantity="strain"
          label={words('certificateA')}
          otherwise={words('notStated')}
        />
        <RemoveCertificate />
      </section>
      <section aria-label={words('plateTitle')}>
        <h2>{words('plateTitle')}</h2>
        <Grade />
        <FileField
          path="steel.wallMeasured_mm[0]"
          quantity="wall"
          label={words('wallMeasured1')}
          otherwise={words('notStated')}
        />
        <FileField
          path="steel.wallMeasured_mm[1]"
          quantity="wall"
          label={words('wallMeasured2')}
          otherwise={words('notStated')}
        />
        <FileField
          path="steel.wallMeasured_mm[2]"
          quantity="wall"
          label={words('wallMeasured3')}
          otherwise={words('notStated')}
        />
        <FileField
          path="steel.wallMeasured_mm[3]"
          quantity="wall"
          label={words('wallMeasured4')}
          otherwise={words('notStated')}
        />
        <Rolling />
      </section>
    </div>
  );
}

function RemoveCertificate() {
  const there = useBoard((b) => valueAt(b.draft, 'steel.certificate') !== undefined);
  if (!there) return null;
  return (
    <button
      type="button"
      onClick={() => changeDraft(withValue(useBoard.getState().draft, 'steel.certificate', undefined))}
    >
      {words('certificateRemove')}
    </button>
  );
}

/** Grades with typical values in the library; another name is kept and told of by the answer. */
const GRADES = ['1.4301', '1.4306', '1.4307', '1.4311', '1.4404', '304', '304L', '316L'] as const;

function Grade() {
  const grade = useBoard((b) => valueAt(b.draft, 'steel.grade'));
  const known = typeof grade === 'string' ? grade : '';
  const choices = GRADES.some((one) => one === known) || known === '' ? GRADES : [known, ...GRADES];
  return (
    <div className="field">
      <label htmlFor="grade">{words('grade')}</label>
      <span className="entry">
        <select
          id="grade"
          value={known}
          onChange={(event) =>
            changeDraft(withValue(useBoard.getState().draft, 'steel.grade', event.target.value || undefined))
          }
        >
          <option value="">{words('notStated')}</option>
          {choices.map((one) => (
            <option key={one} value={one}>
              {one}
            </option>
          ))}
        </select>
      </span>
    </div>
  );
}

/** Rolled plate is harder than its coupons; how it was bent says by how much. */
function Rolling() {
  const rolling = useBoard((b) => valueAt(b.draft, 'steel.rolling'));
  const put = (value: Parameters<typeof withValue>[2]): void =>
    changeDraft(withValue(useBoard.getState().draft, 'steel.rolling', value));
  if (rolling === undefined)
    return (
      <button type="button" onClick={() => put({ machine: 'three-roll', passes: 3 })}>
        {words('rollingAdd')}
      </button>
    );
  return (
    <>
      <FileField path="steel.rolling.passes" label={words('rollingPasses')} />
      <FileField
        path="steel.rolling.overbendRadius_mm"
        quantity="length"
        label={words('rollingOverbend')}
        otherwise={words('notStated')}
      />
      <button type="button" onClick={() => put(undefined)}>
        {words('rollingRemove')}
      </button>
    </>
  );
}
