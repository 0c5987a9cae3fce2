/** Tokens in SQLite: the digest of each secret, never the secret. */
import { ROLES, type Role, type Token } from '@hoopwright/wire/project';
import type { Base, Row } from '../../driver/base.ts';
import { freshId, freshSecret, sha256 } from '../hash.ts';
import type { Surroundings, Tokens } from '../store.ts';
import { figure, ifFigure, ifText, orNull, text } from './row.ts';

export const openTokens = (base: Base, { clock, dice }: Surroundings): Tokens => {
  const find = (id: string): Token | undefined => {
    const row = base.one('SELECT * FROM token WHERE id = ?', id);
    return row && tokenOf(row);
  };
  return {
    make: ({ label, role, record }) => {
      const [id, secret, created_ms] = [freshId(dice), freshSecret(dice), clock()];
      const values = [id, sha256(secret), role, label, created_ms, orNull(record)];
      base.change('INSERT INTO token VALUES (?, ?, ?, ?, ?, NULL, ?)', ...values);
      return { token: { id, role, label, ...(record === undefined ? {} : { record }), created_ms }, secret };
    },
    check: (secret) => {
      const row = base.one('SELECT * FROM token WHERE digest = ? AND revoked_ms IS NULL', sha256(secret));
      return row && tokenOf(row);
    },
    list: () => base.all('SELECT * FROM token ORDER BY rowid DESC').map(tokenOf),
    revoke: (id) => {
      base.change('UPDATE token SET revoked_ms = ? WHERE id = ? AND revoked_ms IS NULL', clock(), id);
      return find(id);
    },
  };
};

const tokenOf = (row: Row): Token => ({
  id: text(row.id),
  role: roleOf(text(row.role)),
  label: text(row.label),
  ...ifText('record', row.record),
  created_ms: figure(row.created_ms),
  ...ifFigure('revoked_ms', row.revoked_ms),
});

/** A role that this program does not know must open nothing. */
const roleOf = (name: string): Role => {
  const role = ROLES.find((known) => known === name);
  if (role) return role;
  throw new Error(`the base holds a token with the role "${name}", which this program does not know`);
};
