/** The set-up of the day, in the `day` keys of the tank file: pump and water, people and place, release, papers. */
import type { Plan } from '@hoopwright/wire/plan';
import { useBoard } from '../../state/board.ts';
import { changeWith } from '../../state/file/change.ts';
import { type SupplyBy, withSupply } from '../../state/file/day.ts';
import { valueAt, withValue, without } from '../../state/file/edit.ts';
import { words } from '../../words/say.ts';
import { FileField, OptionalField as Optional } from '../field/FileField.tsx';
import { Pick } from '../field/Pick.tsx';
import { TextField } from '../field/TextField.tsx';
import { Back } from './Contents.tsx';
import { Gauges, Plugs, Readings } from './Instruments.tsx';
import { Limits } from './Limits.tsx';

/** @param plan whose limits stand beside those that the team sets */
export function DaySetUp({ plan }: { readonly plan: Plan | undefined }) {
  return (
    <section id="day" className="parts day" aria-label={words('daySetUp')}>
      <h2>{words('daySetUp')}</h2>
      <Back />
      <div className="day-parts">
        <Pump />
        <People />
        <Release />
        <Plugs />
        <Gauges />
        <Limits plan={plan} />
        <Readings />
      </div>
    </section>
  );
}

const BARE = words('notStated');

function Pump() {
  return (
    <fieldset className="part">
      <legend>{words('dayPump')}</legend>
      <Optional path="day.pump.mL_per_stroke" label={words('dayStroke')} />
      <Optional path="day.pump.strokes_per_min" label={words('dayStrokes')} />
      <Optional path="duty.pump_L_per_min" label={words('dayPumpFlow')} />
      <Optional path="day.pump.highest_bar" label={words('dayHighest')} />
      <FileField path="water.trappedAir_L" label={words('dayAir')} otherwise={words('dayZero')} />
      <FileField path="water.temperature_C" label={words('dayWater')} otherwise="15" />
      <Optional path="day.chloride_ppm" label={words('dayChloride')} />
      <Supply />
      <Optional path="day.thermometer.resolution_K" label={words('dayThermometer')} />
    </fieldset>
  );
}

const SUPPLIES = ['none', 'strokes', 'weighing', 'meter'] as const;

function Supply() {
  const by = useBoard((b) => valueAt(b.draft, 'day.supply.by'));
  const value = SUPPLIES.find((one) => one === by) ?? 'none';
  const choose = (chosen: 'none' | SupplyBy): void =>
    changeWith((draft) => withSupply(draft, chosen === 'none' ? undefined : chosen));
  return (
    <>
      <Pick
        label={words('daySupply')}
        value={value}
        choices={[
          { value: 'none', words: BARE },
          { value: 'strokes', words: words('supplyStrokes') },
          { value: 'weighing', words: words('supplyWeighing') },
          { value: 'meter', words: words('supplyMeter') },
        ]}
        onPick={choose}
      />
      {value === 'none' ? null : <FileField path="day.supply.resolution_mL" label={words('daySupplyStep')} />}
    </>
  );
}

const EDITIONS = ['none', 'later', '2008'] as const;

function People() {
  const stated = useBoard((b) => valueAt(b.draft, 'day.standOffEdition'));
  return (
    <fieldset className="part">
      <legend>{words('dayPeople')}</legend>
      <TextField path="day.roles.director" label={words('dayDirector')} />
      <TextField path="day.roles.pump" label={words('dayPumper')} />
      <TextField path="day.roles.noteTaker" label={words('dayNotes')} />
      <Optional path="day.approachPressure_bar" label={words('dayApproach')} />
      <Optional path="day.distance_m" label={words('dayDistance')} />
      <Optional path="day.site.temperature_C" label={words('daySite')} />
      <Optional path="day.floor.carries_kg" label={words('dayFloor')} />
      <Pick
        label={words('dayEdition')}
        value={EDITIONS.find((one) => one === stated) ?? 'none'}
        choices={[
          { value: 'none', words: BARE },
          { value: 'later', words: words('editionLater') },
          { value: '2008', words: words('edition2008') },
        ]}
        onPick={(value) =>
          changeWith((draft) =>
            value === 'none'
              ? without(draft, 'day.standOffEdition')
              : withValue(draft, 'day.standOffEdition', value),
          )
        }
      />
    </fieldset>
  );
}

const PAPERS = ['A4', 'Letter'] as const;

function Release() {
  const paper = useBoard((b) => valueAt(b.draft, 'day.paper'));
  return (
    <fieldset className="part wordy">
      <legend>{words('dayRelief')}</legend>
      <Optional path="day.relief.opens_bar" label={words('dayOpens')} />
      <Optional path="day.relief.flow_L_per_min" label={words('dayPasses')} />
      <TextField path="day.release.first" label={words('dayRelease')} />
      <TextField path="day.release.second" label={words('daySecond')} />
      <Optional path="day.hose.insideDiameter_mm" label={words('dayHose')} />
      <Pick
        label={words('dayPaper')}
        value={PAPERS.find((one) => one === paper) ?? 'A4'}
        choices={PAPERS.map((one) => ({ value: one, words: one }))}
        onPick={(value) => changeWith((draft) => withValue(draft, 'day.paper', value))}
      />
    </fieldset>
  );
}
