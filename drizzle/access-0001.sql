-- Sign-in only: losing this file costs sign-in, never data.
CREATE TABLE credential (
  person TEXT NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('pin', 'password')),
  hash TEXT NOT NULL,
  set_at INTEGER NOT NULL,
  PRIMARY KEY (person, kind)
) STRICT, WITHOUT ROWID;

CREATE TABLE session (
  token_hash BLOB PRIMARY KEY CHECK (length(token_hash) = 32),
  person TEXT NOT NULL,
  device TEXT NOT NULL,
  begun_at INTEGER NOT NULL,
  seen_at INTEGER NOT NULL,
  locked_at INTEGER
) STRICT, WITHOUT ROWID;

CREATE TABLE setup_link (
  token_hash BLOB PRIMARY KEY CHECK (length(token_hash) = 32),
  expires_at INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE device (
  id TEXT PRIMARY KEY,
  token_hash BLOB NOT NULL UNIQUE CHECK (length(token_hash) = 32),
  name TEXT NOT NULL,
  enrolled_at INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE attempt (
  person TEXT NOT NULL,
  device TEXT NOT NULL,
  failures INTEGER NOT NULL,
  next_at INTEGER NOT NULL,
  PRIMARY KEY (person, device)
) STRICT, WITHOUT ROWID;

CREATE TABLE draft (
  form_key TEXT PRIMARY KEY,
  person TEXT NOT NULL,
  path TEXT NOT NULL,
  fields TEXT NOT NULL,
  saved_at INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
CREATE INDEX draft_by_person ON draft (person, saved_at);
