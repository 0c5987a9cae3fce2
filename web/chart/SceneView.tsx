/** A scene of the drawing sheet as SVG of the page: the same marks that paper gets, in the colours of the look. */
import { LINES, type Mark, type Point, type Run, type Scene, type Text } from '@hoopwright/report/sheet';
import { Fragment, memo, type ReactNode, useId } from 'react';

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

export interface SceneProps {
  readonly scene: Pick<Scene, 'marks' | 'title'>;
  readonly box: Box;
  readonly className?: string;
  /** Draws a figure that may be changed where it stands; absent: figures are plain. */
  readonly figure?: (run: Run, text: Text, key: string) => ReactNode;
  readonly children?: ReactNode;
}

export function SceneView({ scene, box, className, figure, children }: SceneProps) {
  const id = useId();
  return (
    <svg
      className={`scene ${className ?? ''}`}
      viewBox={`${box.left} ${box.top} ${box.width} ${box.height}`}
      role="group"
      aria-label={scene.title}
    >
      <Hatchings id={id} />
      <Marks marks={scene.marks} id={id} figure={figure} />
      {children}
    </svg>
  );
}

/** Hatching at 45°, continuous narrow. Names are the scene's own, so that two scenes on a page do not share them. */
function Hatchings({ id }: { readonly id: string }) {
  const pattern = (name: string, turn: number, gap: number) => (
    <pattern
      id={`${id}${name}`}
      width={gap}
      height={gap}
      patternUnits="userSpaceOnUse"
      patternTransform={`rotate(${turn})`}
    >
      <path className="ink-line" d={`M0 0V${gap}`} strokeWidth={LINES.narrow.width * 1.2} />
    </pattern>
  );
  return (
    <defs>
      {pattern('right', 45, 3.2)}
      {pattern('left', -45, 3.2)}
      {pattern('forbidden', 45, 8)}
    </defs>
  );
}

interface MarksProps {
  readonly marks: readonly Mark[];
  readonly id: string;
  readonly figure: SceneProps['figure'];
}

const Marks = memo(function Marks({ marks, id, figure }: MarksProps) {
  return marks.map((mark, i) => <OneMark key={i} mark={mark} id={id} figure={figure} />);
});

interface OneMarkProps {
  readonly mark: Mark;
  readonly id: string;
  readonly figure: SceneProps['figure'];
}

function OneMark({ mark, id, figure }: OneMarkProps) {
  switch (mark.kind) {
    case 'stroke': {
      const { width, dashes } = LINES[mark.line];
      return (
        <path
          className={`line ${mark.tone ?? 'ink'}-line ${mark.line}`}
          d={pathOf(mark.points, mark.closed === true)}
          strokeWidth={width}
          {...(dashes.length === 0 ? {} : { strokeDasharray: dashes.join(' ') })}
        />
      );
    }
    case 'area': {
      const d = pathOf(mark.points, true);
      const { fill } = mark;
      if (fill.kind === 'hatch') return <path d={d} fill={`url(#${id}${fill.hatch})`} />;
      if (fill.kind === 'colour') return <path d={d} fill={fill.colour} />;
      return (
        <path
          className={`${fill.tone}-fill`}
          d={d}
          {...(fill.opacity === undefined ? {} : { fillOpacity: fill.opacity })}
        />
      );
    }
    case 'ring':
      return (
        <circle
          className={`ink-line ${mark.filled === true ? 'ink-fill' : 'paper-fill'}`}
          cx={mark.at[0]}
          cy={mark.at[1]}
          r={mark.radius}
          strokeWidth={LINES[mark.line].width}
        />
      );
    case 'text':
      return <TextMark text={mark} figure={figure} />;
  }
}

function TextMark({ text, figure }: { readonly text: Text; readonly figure: SceneProps['figure'] }) {
  const [x, y] = text.at;
  return (
    <text
      x={x}
      y={y}
      fontSize={text.size}
      textAnchor={text.anchor}
      {...(text.upright === true ? { transform: `rotate(-90 ${x} ${y})` } : {})}
    >
      {text.runs.map((run, i) =>
        run.figure?.path !== undefined && figure !== undefined ? (
          <Fragment key={i}>{figure(run, text, `${text.of ?? ''} ${i}`)}</Fragment>
        ) : (
          <tspan key={i} className={classOf(run)}>
            {run.text}
          </tspan>
        ),
      )}
    </text>
  );
}

const classOf = (run: Run): string => `${run.tone ?? 'ink'}-fill${run.bold === true ? ' strong' : ''}`;

const pathOf = (points: readonly Point[], closed: boolean): string => {
  let d = '';
  for (let i = 0; i < points.length; i++)
    d += `${i === 0 ? 'M' : 'L'}${points[i][0].toFixed(2)} ${points[i][1].toFixed(2)}`;
  return closed ? `${d}Z` : d;
};
