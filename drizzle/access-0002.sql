-- One-time links that enrol a screen, each with what the screen will be called and who made it.
CREATE TABLE enrol_link (
  token_hash BLOB PRIMARY KEY CHECK (length(token_hash) = 32),
  name TEXT NOT NULL,
  kind TEXT NOT NULL,
  made_by TEXT NOT NULL,
  expires_at INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
