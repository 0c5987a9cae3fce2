/** A figure of the drawing while it is changed: a field that stands where the figure stands. */
import { type RefObject, useLayoutEffect, useRef } from 'react';
import { useBoard } from '../../state/board.ts';
import { look } from '../../state/view.ts';
import { nameOf } from '../../words/names.ts';
import { FileField } from './FileField.tsx';

interface InPlaceProps {
  readonly path: string;
  readonly name: string;
  readonly around: RefObject<HTMLDivElement | null>;
}

export function InPlace({ path, name, around }: InPlaceProps) {
  const box = useRef<HTMLDivElement>(null);
  const drawn = useBoard((b) => b.drawn);
  useLayoutEffect(() => {
    const figure = figureAt(around.current, name);
    if (figure === null) return;
    if (box.current !== null && around.current !== null) stand(box.current, figure, around.current);
  }, [name, around, drawn]);
  const close = (): void => {
    look({ editing: undefined });
    requestAnimationFrame(() => figureAt(around.current, name)?.focus());
  };
  return (
    <div className="in-place" ref={box}>
      <FileField path={path} label={nameOf(path)} onDone={close} grabsFocus />
    </div>
  );
}

const figureAt = (around: HTMLElement | null, name: string): SVGElement | null =>
  around?.querySelector<SVGElement>(`[data-name="${CSS.escape(name)}"]`) ?? null;

/** Over the figure, but inside the sheet. */
function stand(box: HTMLElement, figure: SVGElement, around: HTMLElement): void {
  const [at, room] = [figure.getBoundingClientRect(), around.getBoundingClientRect()];
  const left = Math.max(0, Math.min(at.left - room.left - 8, room.width - box.offsetWidth));
  const top = Math.max(0, Math.min(at.top - room.top - 24, room.height - box.offsetHeight));
  box.style.left = `${left}px`;
  box.style.top = `${top}px`;
}
