-- Wrong tries in a row, by person, by what was tried, and by where: a session or screen that is the person's own (its token's hash), or
-- anywhere else (''). No time stands here: the clock may be wrong, so the running program counts the wait itself.
DROP TABLE attempt;
CREATE TABLE attempt (
  person TEXT NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('pin', 'password')),
  place TEXT NOT NULL,
  failures INTEGER NOT NULL CHECK (failures > 0),
  PRIMARY KEY (person, kind, place)
) STRICT, WITHOUT ROWID;
-- Screens at which a person has signed in with the PIN they have now, by the hash of the screen's own token.
CREATE TABLE own_screen (
  person TEXT NOT NULL,
  token_hash BLOB NOT NULL CHECK (length(token_hash) = 32),
  PRIMARY KEY (person, token_hash)
) STRICT, WITHOUT ROWID;
