/** A table that may be wider than a phone: it scrolls in itself, and keys reach it. */
import type { ReactNode } from 'react';

export const Wide = ({ label, children }: { readonly label: string; readonly children: ReactNode }) => (
  // oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- what scrolls must be reached by keys
  <div className="wide" role="group" aria-label={label} tabIndex={0}>
    {children}
  </div>
);
