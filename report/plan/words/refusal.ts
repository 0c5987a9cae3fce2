/** Why there is no plan, in sentences: what came, what was wanted, what to do. */
import type { Refusal } from '@hoopwright/wire/plan';
import type { Figures } from '../figures.ts';
import { catalogue } from './fill.ts';

const ENGLISH = {
  'no duty':
    'The tank file states no duty: give duty.workingPressure_bar (and duty.stretchFactor, 1.5 where left out), so that there is a pressure to stretch it to.',
  'bursts before target':
    'The tank gives way before the stretch pressure: {kind} at {end}, wanted {target}. Lower the duty or the factor, or take a thicker or stronger sheet.',
  'no end before target':
    'The forecast does not reach the stretch pressure of {target}, and found no maximum: see the warnings of the forecast.',
  'over 99 of 100':
    'The stretch pressure {target} is over {survive}, which 99 of 100 such tanks survive ({draws} tanks of varied steel). Lower the duty, or narrow the range with coupons.',
  'beyond evidence':
    'At {pressure} the wall has {plastic} plastic strain; the evidence for its curve ends at {evidence}. Test the sheet further, or lower the duty.',
  'girth not drawn':
    'day.readings names the girth "{girth}", which the tank does not have; it has {drawn}. Name one of these, or add it under girths.',
  'someone for girth':
    'No girth can be read from behind the wall, so somebody would be needed at the tank at {pressure}; nobody may be there above {approach}. Read one girth by wire, camera or telescope.',
  'someone for pressure':
    'No gauge can be read from behind the wall, so somebody would be needed at the tank at {pressure}; nobody may be there above {approach}. Put a gauge behind the wall.',
  'someone for zero':
    'A girth is read at the tank, which needs a little pressure, and the approach pressure is {approach}: nobody may be there. Set the approach pressure (day.approachPressure_bar) after your local rules, or read that girth from behind the wall.',
  'relief under stretch':
    'The relief valve opens at {opens}, which is not over the stretch pressure {target}: it would end the stretch. Set it just over the stretch pressure.',
  'relief too small':
    'The relief valve passes {flow} and the pump gives {pump}: the pressure would go on rising with the valve open. Take a larger valve or a slower pump.',
  'gauge range': 'Gauge "{name}" ends at {range}; it must reach {needs}. Take one whose scale goes further.',
  'pump pressure':
    'The pump is made for {highest}; the stretch needs {target}. Take a pump for that pressure.',
  'pump too slow':
    'The pump gives {flow}; the first growth needs {needs}: with less, the pump ends the growth and not the steel, and nobody could tell that it has come to rest. Take a faster pump.',
  'air over limit':
    'The tank file states {air} of trapped air at filling; the limit is {limit}. Plan the filling so that it leaves less, or set day.limits.trappedAir_L with name and reason.',
} as const;

const filled = catalogue(ENGLISH);

export function refusalText(refusal: Refusal, f: Figures): string {
  switch (refusal.code) {
    case 'no duty':
      return filled('no duty');
    case 'bursts before target': {
      const target = f.pressure(refusal.target_bar);
      return refusal.end === undefined
        ? filled('no end before target', { target })
        : filled('bursts before target', {
            kind: refusal.end.kind,
            end: f.pressure(refusal.end.pressure_bar),
            target,
          });
    }
    case 'over 99 of 100':
      return filled('over 99 of 100', {
        target: f.pressure(refusal.target_bar),
        survive: f.pressure(refusal.survive99_bar),
        draws: f.count(refusal.draws),
      });
    case 'beyond evidence':
      return filled('beyond evidence', {
        pressure: f.pressure(refusal.pressure_bar),
        plastic: f.growth(refusal.plastic_percent),
        evidence: f.growth(refusal.evidence_percent),
      });
    case 'girth not drawn':
      return filled('girth not drawn', { girth: refusal.girth, drawn: refusal.drawn.join(', ') });
    case 'someone at the tank':
      return someone(refusal, f);
    default:
      return equipment(refusal, f);
  }
}

function someone(
  { reads, pressure_bar, approach_bar }: Extract<Refusal, { code: 'someone at the tank' }>,
  f: Figures,
): string {
  const approach = f.pressure(approach_bar);
  if (reads === 'zero') return filled('someone for zero', { approach });
  return filled(`someone for ${reads}`, { pressure: f.pressure(pressure_bar), approach });
}

type Equipment = Extract<
  Refusal,
  {
    code:
      | 'relief under stretch'
      | 'relief too small'
      | 'gauge range'
      | 'pump pressure'
      | 'pump too slow'
      | 'air over limit';
  }
>;

function equipment(refusal: Equipment, f: Figures): string {
  switch (refusal.code) {
    case 'relief under stretch':
      return filled('relief under stretch', {
        opens: f.pressure(refusal.opens_bar),
        target: f.pressure(refusal.target_bar),
      });
    case 'relief too small':
      return filled('relief too small', {
        flow: f.flow(refusal.flow_L_per_min),
        pump: f.flow(refusal.pump_L_per_min),
      });
    case 'gauge range':
      return filled('gauge range', {
        name: refusal.name,
        range: f.pressure(refusal.range_bar),
        needs: f.pressure(refusal.needs_bar),
      });
    case 'pump pressure':
      return filled('pump pressure', {
        highest: f.pressure(refusal.highest_bar),
        target: f.pressure(refusal.target_bar),
      });
    case 'pump too slow':
      return filled('pump too slow', {
        flow: f.leak(refusal.flow_mL_per_min),
        needs: f.leak(refusal.needs_mL_per_min),
      });
    case 'air over limit':
      return filled('air over limit', { air: f.litres(refusal.air_L), limit: f.litres(refusal.limit_L) });
  }
}
