/** Pressure over growth: the plan as marks of the sheet, the measured points on a canvas over it, drawn once a frame. */
import { fromBar, fromPercent } from '@hoopwright/core/units';
import { onPanel, type Panel } from '@hoopwright/report/curve';
import { useCallback, useMemo, useRef } from 'react';
import { SceneView } from '../../chart/SceneView.tsx';
import { useManner, useReading } from '../../state/manner.ts';
import { say } from '../../words/day/say.ts';
import { type CurvePoints, curvePoints, NO_POINTS } from '../tells/curvePoints.ts';
import { useDay } from '../state/live.ts';
import { plannedStep } from '../tells/pumpOrder.ts';
import { trace } from '../state/trace.ts';
import { type Size, useSize } from './useSize.ts';
import { nextMark, panelFor, planMarks } from './planMarks.ts';
import { TraceTable } from './TraceTable.tsx';
import { useFrames } from './useFrames.ts';

/** px for each unit of the sheet: lettering that is read at arm's length. */
const ZOOM = 1.4;

export function DayCurve() {
  const [around, size] = useSize<HTMLDivElement>();
  return (
    <figure className="day-curve" aria-label={say('curveTitle')}>
      <div className="chart-room" ref={around}>
        {size.width > 0 ? <Curve size={size} /> : null}
      </div>
      <TraceTable />
    </figure>
  );
}

function Curve({ size }: { readonly size: Size }) {
  const plan = useDay((d) => d.state?.plan?.plan);
  const girth = useDay((d) => d.state?.figures.growth?.girth);
  const target = useDay((d) => (d.state === undefined ? undefined : targetOf(d.state)));
  const manner = useManner();
  const box = useMemo(
    () => ({ left: 0, top: 0, width: size.width / ZOOM, height: size.height / ZOOM }),
    [size],
  );
  // In steps, so that the axis is not made anew with each reading.
  const grown = useDay((d) => Math.ceil(4 * (d.state?.figures.growth?.value ?? 0)) / 4);
  const panel = useMemo(
    () => (plan === undefined ? undefined : panelFor(plan, manner, box, grown)),
    [plan, manner, box, grown],
  );
  const marks = useMemo(
    () =>
      plan === undefined || panel === undefined
        ? []
        : [...planMarks(panel, plan, girth, manner), ...nextMark(panel, target, manner)],
    [plan, panel, girth, manner, target],
  );
  return (
    <>
      <SceneView scene={{ marks, title: say('curveTitle') }} box={box} />
      {panel === undefined ? null : <Measured size={size} panel={panel} />}
    </>
  );
}

/** Pressure of this step, or of the next where this one is reached. */
function targetOf(state: Parameters<typeof plannedStep>[0]): number | undefined {
  const next = plannedStep(state, state.next);
  return next?.pressure_bar ?? state.step?.pressure_bar;
}

function Measured({ size, panel }: { readonly size: Size; readonly panel: Panel }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const look = useReading((r) => r.look);
  const draw = useCallback(() => {
    const { state } = useDay.getState();
    if (canvas.current === null) return;
    const points = state === undefined ? NO_POINTS : curvePoints(state, trace);
    drawPoints(canvas.current, panel, points, look);
  }, [panel, look]);
  useFrames(draw);
  const ratio = window.devicePixelRatio;
  return (
    <canvas
      ref={canvas}
      width={size.width * ratio}
      height={size.height * ratio}
      aria-hidden="true"
      data-chart="measured"
    />
  );
}

/** Readings by hand are so few that each is a point of its own; more than these are a line. */
const FEW = 240;

function drawPoints(
  canvas: HTMLCanvasElement,
  panel: Panel,
  { growth, bar }: CurvePoints,
  _look: string,
): void {
  const paper = canvas.getContext('2d');
  if (paper === null) return;
  const scale = ZOOM * window.devicePixelRatio;
  paper.setTransform(scale, 0, 0, scale, 0, 0);
  paper.clearRect(0, 0, canvas.width, canvas.height);
  const styles = getComputedStyle(canvas);
  paper.strokeStyle = paper.fillStyle = styles.getPropertyValue('--ink');
  if (growth.length === 0) return;
  const at = (i: number) => onPanel(panel, [fromPercent(growth[i]), fromBar(bar[i])]);
  paper.lineWidth = 1.5;
  paper.lineJoin = 'round';
  paper.beginPath();
  for (let i = 0; i < growth.length; i++) {
    const [x, y] = at(i);
    if (i === 0) paper.moveTo(x, y);
    else paper.lineTo(x, y);
  }
  paper.stroke();
  if (growth.length <= FEW)
    for (let i = 0; i < growth.length; i++) {
      const [x, y] = at(i);
      paper.beginPath();
      paper.arc(x, y, 2.6, 0, 2 * Math.PI);
      paper.fill();
    }
  present(paper, at(growth.length - 1), styles);
}

/** Sheet units that the word beside the ring takes, with the axis. */
const ROOM_FOR_WORD = 130;

/** Where it stands now: a ring with a cross through it, and the word. */
function present(
  paper: CanvasRenderingContext2D,
  [x, y]: readonly [number, number],
  styles: CSSStyleDeclaration,
): void {
  paper.fillStyle = styles.getPropertyValue('--paper');
  paper.lineWidth = 2;
  paper.beginPath();
  paper.arc(x, y, 6, 0, 2 * Math.PI);
  paper.fill();
  paper.stroke();
  paper.beginPath();
  paper.moveTo(x - 11, y);
  paper.lineTo(x + 11, y);
  paper.moveTo(x, y - 11);
  paper.lineTo(x, y + 11);
  paper.lineWidth = 1;
  paper.stroke();
  paper.font = `11px ${styles.fontFamily}`;
  paper.fillStyle = styles.getPropertyValue('--ink');
  paper.strokeStyle = styles.getPropertyValue('--paper');
  paper.lineWidth = 4;
  // To the left, where the curve has been; near the axis to the right.
  const left = x > ROOM_FOR_WORD;
  paper.textAlign = left ? 'right' : 'left';
  const [tx, ty] = left ? [x - 10, y - 9] : [x + 12, y + 4];
  paper.strokeText(say('curveMeasured'), tx, ty);
  paper.fillText(say('curveMeasured'), tx, ty);
}
