/** The sheet of the tank: the drawing, what it says, and the numbers that are not dimensions. */
import { remarkSentence } from '@hoopwright/report/answer';
import { useBoard } from '../state/board.ts';
import { useManner } from '../state/manner.ts';
import { words } from '../words/say.ts';
import { FileField } from './field/FileField.tsx';
import { GirthTable } from './table/GirthTable.tsx';
import { DrawnHow, Hand } from './Hand.tsx';
import { Parts } from './field/Parts.tsx';
import { PlaceFigures } from './said/PlaceFigures.tsx';
import { StateWords } from './said/StateWords.tsx';
import { TankDrawing } from './TankDrawing.tsx';
import { TitleBlock } from './said/TitleBlock.tsx';

export function TankSheet() {
  return (
    <main className="sheet tank-sheet">
      <TankDrawing />
      <div className="side">
        <StateWords />
        <Hand />
        <DrawnHow />
        <GirthTable />
        <div className="two">
          <Duty />
          <PlaceFigures />
        </div>
        <Notes />
        <TitleBlock type={words('typeTank')} sheet="1" />
      </div>
      <Parts />
    </main>
  );
}

/** What the drawing has no dimension line for. */
function Duty() {
  return (
    <div className="duty">
      <p className="strong">{words('dutyTitle')}</p>
      <FileField path="duty.workingPressure_bar" quantity="pressure" label={words('fieldWorking')} />
      <FileField path="duty.stretchFactor" label={words('fieldFactor')} term="factor" />
      <FileField
        path="duty.pump_L_per_min"
        quantity="volume"
        label={words('fieldPump')}
        otherwise={words('notStated')}
      />
      <FileField
        path="water.temperature_C"
        quantity="temperature"
        label={words('fieldWater')}
        otherwise="15"
      />
      <FileField path="water.trappedAir_L" quantity="volume" label={words('fieldAir')} otherwise="0" />
    </div>
  );
}

export function Notes() {
  const drawn = useBoard((b) => b.drawn);
  const manner = useManner();
  if (drawn === undefined) return null;
  const warnings = drawn.forecast.remarks.map((remark) => remarkSentence(remark, manner));
  return (
    <div className="notes">
      {warnings.length === 0 ? null : (
        <>
          <p className="strong">{words('warningsTitle')}</p>
          <ul>
            {warnings.map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
        </>
      )}
      <ol>
        {[...drawn.notes, words('caution')].map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ol>
    </div>
  );
}
