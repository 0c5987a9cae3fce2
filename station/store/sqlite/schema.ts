/** The base, step by step. A step that has been released is never changed: a new one is added below it. */

/** The triggers on INSERT also stop INSERT OR REPLACE, which deletes without asking the trigger on DELETE. */
const PROJECTS = `
CREATE TABLE project (
  id TEXT PRIMARY KEY,
  name TEXT NOT NULL,
  created_ms REAL NOT NULL,
  deleted_ms REAL,
  current INTEGER NOT NULL
) STRICT;

CREATE TABLE version (
  project TEXT NOT NULL REFERENCES project,
  number INTEGER NOT NULL,
  parent INTEGER,
  saved_ms REAL NOT NULL,
  saved_by TEXT,
  note TEXT,
  file TEXT NOT NULL,
  PRIMARY KEY (project, number)
) STRICT;
CREATE INDEX version_parent ON version (project, parent);
CREATE TRIGGER version_stays BEFORE UPDATE ON version BEGIN SELECT RAISE(ABORT, 'a version is never changed'); END;
CREATE TRIGGER version_kept BEFORE DELETE ON version BEGIN SELECT RAISE(ABORT, 'a version is never deleted'); END;

CREATE TRIGGER version_new BEFORE INSERT ON version
WHEN EXISTS (SELECT 1 FROM version WHERE project = NEW.project AND number = NEW.number)
BEGIN SELECT RAISE(ABORT, 'a version number is never given twice'); END;

CREATE TABLE bytes (sha256 TEXT PRIMARY KEY, content BLOB NOT NULL) STRICT;

CREATE TABLE attachment (
  id TEXT PRIMARY KEY,
  project TEXT NOT NULL REFERENCES project,
  name TEXT NOT NULL,
  sha256 TEXT NOT NULL REFERENCES bytes,
  added_ms REAL NOT NULL,
  deleted_ms REAL
) STRICT;
CREATE INDEX attachment_project ON attachment (project);

CREATE TABLE change (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  project TEXT NOT NULL REFERENCES project,
  kind TEXT NOT NULL,
  current INTEGER NOT NULL,
  changed_by TEXT,
  wall_ms REAL NOT NULL
) STRICT;

CREATE TABLE token (
  id TEXT PRIMARY KEY,
  digest TEXT NOT NULL UNIQUE,
  role TEXT NOT NULL,
  label TEXT NOT NULL,
  created_ms REAL NOT NULL,
  revoked_ms REAL
) STRICT;
`;

const RECORDS = `
CREATE TABLE record (
  number INTEGER PRIMARY KEY,
  id TEXT NOT NULL UNIQUE,
  about TEXT NOT NULL,
  digest TEXT NOT NULL,
  origin TEXT NOT NULL
) STRICT;
CREATE TRIGGER record_stays BEFORE UPDATE ON record BEGIN SELECT RAISE(ABORT, 'a record is never changed'); END;
CREATE TRIGGER record_kept BEFORE DELETE ON record BEGIN SELECT RAISE(ABORT, 'a record is never deleted'); END;

CREATE TABLE entry (
  record INTEGER NOT NULL REFERENCES record,
  seq INTEGER NOT NULL,
  run INTEGER NOT NULL,
  mono_ms REAL NOT NULL,
  wall_ms REAL NOT NULL,
  kind TEXT NOT NULL,
  body TEXT NOT NULL,
  digest BLOB NOT NULL,
  PRIMARY KEY (record, seq)
) STRICT, WITHOUT ROWID;
CREATE TRIGGER entry_stays BEFORE UPDATE ON entry BEGIN SELECT RAISE(ABORT, 'an entry is never changed'); END;
CREATE TRIGGER entry_kept BEFORE DELETE ON entry BEGIN SELECT RAISE(ABORT, 'an entry is never deleted'); END;
CREATE TRIGGER entry_next BEFORE INSERT ON entry
WHEN NEW.seq <> 1 + coalesce((SELECT max(seq) FROM entry WHERE record = NEW.record), 0)
BEGIN SELECT RAISE(ABORT, 'an entry follows the last one'); END;
`;

const PLANS = `
CREATE TABLE plan (
  project TEXT NOT NULL REFERENCES project,
  digest TEXT NOT NULL,
  revision TEXT NOT NULL,
  version INTEGER NOT NULL,
  frozen_ms REAL NOT NULL,
  frozen_by TEXT,
  content TEXT NOT NULL,
  PRIMARY KEY (project, digest)
) STRICT;
CREATE TRIGGER plan_stays BEFORE UPDATE ON plan BEGIN SELECT RAISE(ABORT, 'a frozen plan is never changed'); END;
CREATE TRIGGER plan_kept BEFORE DELETE ON plan BEGIN SELECT RAISE(ABORT, 'a frozen plan is never deleted'); END;
CREATE TRIGGER plan_new BEFORE INSERT ON plan
WHEN EXISTS (SELECT 1 FROM plan WHERE project = NEW.project AND (revision = NEW.revision OR digest = NEW.digest))
BEGIN SELECT RAISE(ABORT, 'a revision is never given twice'); END;
`;

/** A link of the crew belongs to one day. */
const LINKS = `ALTER TABLE token ADD COLUMN record TEXT;`;

export const MIGRATIONS: readonly string[] = [PROJECTS + RECORDS, PLANS, LINKS];
