/** What the tank is made of beside its dimensions: heads, girths, seams, baffles, holds, how it stands. */
import type { ReactNode } from 'react';
import { useBoard } from '../../state/board.ts';
import { changeDraft } from '../../state/file/change.ts';
import { type FileDraft, isRecord, valueAt, withValue, without } from '../../state/file/edit.ts';
import {
  HEAD_SHAPES,
  type HeadShape,
  type PartList,
  partsOf,
  shapeOf,
  withBoss,
  withoutPart,
  withPart,
  withShape,
} from '../../state/file/parts.ts';
import { words } from '../../words/say.ts';
import { FileField } from './FileField.tsx';
import { Pick } from './Pick.tsx';
import { TextField } from './TextField.tsx';

const change = (make: (draft: FileDraft) => FileDraft): void => changeDraft(make(useBoard.getState().draft));

export function Parts() {
  return (
    <section className="parts" aria-label={words('partsTitle')}>
      <h2>{words('partsTitle')}</h2>
      <div className="part-list">
        <div>
          <TextField path="name" label={words('fieldName')} />
          <TextField path="serial" label={words('fieldSerial')} />
          <Head end="top" title={words('partTop')} />
          <Head end="bottom" title={words('partBottom')} />
          <Stand />
        </div>
        <div>
          <List list="duty.holds" title={words('holdsTitle')} add={words('holdAdd')}>
            {(i) => (
              <>
                <FileField
                  path={`duty.holds[${i}].pressure_bar`}
                  label={words('holdPressure', { number: i + 1 })}
                />
                <FileField path={`duty.holds[${i}].minutes`} label={words('holdMinutes')} />
                <Valve index={i} />
              </>
            )}
          </List>
          <List list="girths" title={words('girthsTitle')} add={words('girthAdd')}>
            {(i) => (
              <>
                <TextField path={`girths[${i}].name`} label={words('girthName')} />
                <FileField path={`girths[${i}].at_mm`} label={words('heightOver')} />
              </>
            )}
          </List>
        </div>
        <div>
          <LongSeam />
          <List list="seams.girth" title={words('girthSeamsTitle')} add={words('girthSeamAdd')}>
            {(i) => (
              <>
                <FileField path={`seams.girth[${i}].at_mm`} label={words('heightOver')} />
                <FileField path={`seams.girth[${i}].width_mm`} label={words('seamWidth')} />
                <FileField path={`seams.girth[${i}].strength`} label={words('seamStrength')} otherwise="1" />
              </>
            )}
          </List>
          <List list="baffles" title={words('bafflesTitle')} add={words('baffleAdd')}>
            {(i) => (
              <>
                <FileField path={`baffles[${i}].at_mm`} label={words('heightOver')} />
                <FileField path={`baffles[${i}].width_mm`} label={words('baffleWidth')} />
                <FileField path={`baffles[${i}].thickness_mm`} label={words('baffleThickness')} />
              </>
            )}
          </List>
          <List list="skirts" title={words('skirtsTitle')} add={words('skirtAdd')}>
            {(i) => (
              <>
                <FileField path={`skirts[${i}].length_mm`} label={words('skirtLength')} />
                <FileField path={`skirts[${i}].wall_mm`} label={words('skirtWall')} />
              </>
            )}
          </List>
        </div>
      </div>
    </section>
  );
}

interface ListProps {
  readonly list: PartList;
  readonly title: string;
  readonly add: string;
  readonly children: (index: number) => ReactNode;
}

function List({ list, title, add, children }: ListProps) {
  const count = useBoard((b) => partsOf(b.draft, list).length);
  return (
    <fieldset className="part">
      <legend>{title}</legend>
      {Array.from({ length: count }, (_, i) => (
        <div key={i} className="one">
          {children(i)}
          <button
            type="button"
            aria-label={words('takeNamed', { title, number: i + 1 })}
            onClick={() => change((draft) => withoutPart(draft, list, i))}
          >
            {words('take')}
          </button>
        </div>
      ))}
      <button type="button" onClick={() => change((draft) => withPart(draft, list))}>
        {add}
      </button>
    </fieldset>
  );
}

const SHAPES = {
  'semi-ellipsoidal': 'shapeEllipsoidal',
  'DIN 28011': 'shape28011',
  'DIN 28013': 'shape28013',
  torispherical: 'shapeTorispherical',
  hemispherical: 'shapeHemispherical',
  conical: 'shapeConical',
  flat: 'shapeFlat',
} as const satisfies Record<HeadShape, string>;

function Head({ end, title }: { readonly end: 'top' | 'bottom'; readonly title: string }) {
  const shape = useBoard((b) => shapeOf(b.draft, end));
  const boss = useBoard((b) => isRecord(valueAt(b.draft, `heads.${end}.boss`)));
  return (
    <fieldset className="part">
      <legend>{title}</legend>
      <Pick
        label={words('headShape')}
        value={shape}
        choices={HEAD_SHAPES.map((one) => ({ value: one, words: words(SHAPES[one]) }))}
        onPick={(value) => change((draft) => withShape(draft, end, value))}
      />
      <FileField path={`heads.${end}.wall_mm`} label={words('headWall')} />
      <FileField path={`heads.${end}.straightFlange_mm`} label={words('headFlange')} otherwise="0" />
      <FileField
        path={`heads.${end}.formingStrain_percent`}
        label={words('headForming')}
        otherwise={words('notStated')}
      />
      {boss ? (
        <>
          <FileField path={`heads.${end}.boss.diameter_mm`} label={words('bossDiameter')} />
          <FileField path={`heads.${end}.boss.thickness_mm`} label={words('bossThickness')} />
          <button type="button" onClick={() => change((draft) => without(draft, `heads.${end}.boss`))}>
            {words('bossTake')}
          </button>
        </>
      ) : (
        <button type="button" onClick={() => change((draft) => withBoss(draft, end))}>
          {words('bossAdd')}
        </button>
      )}
    </fieldset>
  );
}

function LongSeam() {
  const there = useBoard((b) => isRecord(valueAt(b.draft, 'seams.long')));
  return (
    <fieldset className="part">
      <legend>{words('longSeamTitle')}</legend>
      {there ? (
        <>
          <FileField path="seams.long.width_mm" label={words('seamWidth')} />
          <FileField path="seams.long.strength" label={words('seamStrength')} otherwise="1" />
          <button type="button" onClick={() => change((draft) => without(draft, 'seams.long'))}>
            {words('take')}
          </button>
        </>
      ) : (
        <button
          type="button"
          onClick={() => change((draft) => withValue(draft, 'seams.long', { width_mm: 6, strength: 0.95 }))}
        >
          {words('longSeamAdd')}
        </button>
      )}
    </fieldset>
  );
}

const STANDS = ['upright', 'lying', 'none'] as const;

function Stand() {
  const axis = useBoard((b) => valueAt(b.draft, 'stand.axis'));
  const value = STANDS.find((one) => one === axis) ?? 'none';
  return (
    <fieldset className="part">
      <legend>{words('standTitle')}</legend>
      <Pick
        label={words('standAxis')}
        value={value}
        choices={[
          { value: 'upright', words: words('standUpright') },
          { value: 'lying', words: words('standLying') },
          { value: 'none', words: words('notStated') },
        ]}
        onPick={(chosen) =>
          change((draft) =>
            chosen === 'none' ? without(draft, 'stand') : withValue(draft, 'stand.axis', chosen),
          )
        }
      />
      {value === 'none' ? null : <FileField path="stand.gauge_mm" label={words('gaugeHeight')} />}
    </fieldset>
  );
}

function Valve({ index }: { readonly index: number }) {
  const path = `duty.holds[${index}].valve`;
  const shut = useBoard((b) => valueAt(b.draft, path) === 'shut');
  return (
    <Pick
      label={words('holdValve')}
      value={shut ? 'shut' : 'open'}
      choices={[
        { value: 'open', words: words('valveOpen') },
        { value: 'shut', words: words('valveShut') },
      ]}
      onPick={(value) => change((draft) => withValue(draft, path, value))}
    />
  );
}
