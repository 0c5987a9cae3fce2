/** Parts of a scene: what the page shows in its own way is left out, and the view is drawn in around the rest. */
import { boxOf, type Mark, type Point, type Scene } from '@hoopwright/report/sheet';
import type { Box } from './SceneView.tsx';

/** Marks of the paper sheet that the page has as text of its own: frame, title block, table, notes. */
const PAPER_ONLY =
  /^(frame|centring mark|title block|row:|unit:|cell:|column|table rule|note$|note number|heading|growth drawn)/;

/** The drawing itself, without the sheet around it, and the box that holds it. */
export function drawingOf(scene: Scene): { readonly scene: Scene; readonly box: Box } {
  const edge = sheetColumn(scene);
  const marks = scene.marks.filter(
    (mark) => !PAPER_ONLY.test(mark.of ?? '') && leftOf(mark) < edge && !isLegend(mark),
  );
  return { scene: { ...scene, marks }, box: boxAround(marks, 10) };
}

export function legendOf(scene: Scene): { readonly scene: Scene; readonly box: Box } | undefined {
  const marks = scene.marks.filter(isLegend);
  return marks.length === 0 ? undefined : { scene: { ...scene, marks, title: '' }, box: boxAround(marks, 4) };
}

const isLegend = (mark: Mark): boolean => mark.of?.startsWith('legend') === true;

/** Metal only, for the small drawing beside a curve. */
const METAL =
  /^(section|skirt|baffle|outside outline|joint|hidden baffle|initial outline|centre line|wall colour)/;

export function metalOf(scene: Scene): { readonly scene: Scene; readonly box: Box } {
  const marks = scene.marks.filter((mark) => METAL.test(mark.of ?? ''));
  return { scene: { ...scene, marks }, box: boxAround(marks, 6) };
}

/** Left edge of the column in which the paper sheet has its table, notes and title block. */
const sheetColumn = (scene: Scene): number =>
  Math.min(
    scene.width,
    ...scene.marks
      .filter((mark) => mark.of?.startsWith('title block') === true)
      .map((mark) => leftOf(mark) - 8),
  );

const pointsOf = (mark: Mark): readonly Point[] => {
  if (mark.kind === 'stroke' || mark.kind === 'area') return mark.points;
  return [mark.at];
};

const leftOf = (mark: Mark): number => Math.min(...pointsOf(mark).map(([x]) => x));

function boxAround(marks: readonly Mark[], margin: number): Box {
  let [left, right, top, bottom] = [Infinity, -Infinity, Infinity, -Infinity];
  const hold = (x: number, y: number): void => {
    left = Math.min(left, x);
    right = Math.max(right, x);
    top = Math.min(top, y);
    bottom = Math.max(bottom, y);
  };
  for (const mark of marks) {
    if (mark.kind === 'text') {
      const box = boxOf(mark);
      hold(box.left, box.top);
      hold(box.right, box.bottom);
    } else for (const [x, y] of pointsOf(mark)) hold(x, y);
  }
  return {
    left: left - margin,
    top: top - margin,
    width: right - left + 2 * margin,
    height: bottom - top + 2 * margin,
  };
}

const SHEET_ONLY = /^(frame|centring mark|heading|subheading|title block|note$|note number|invented)/;

/** The charts that stand above `bottom`, without the sheet around them. */
export function chartOf(scene: Scene, bottom: number): { readonly scene: Scene; readonly box: Box } {
  const marks = scene.marks.filter(
    (mark) => !SHEET_ONLY.test(mark.of ?? '') && pointsOf(mark).every(([, y]) => y < bottom),
  );
  return { scene: { ...scene, marks }, box: boxAround(marks, 6) };
}
