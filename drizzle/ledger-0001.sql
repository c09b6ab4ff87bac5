-- The ledger: leaves as they were hashed, the tree over them, signatures, commands, sealed values, and the things folded from facts.
CREATE TABLE entry (
  seq INTEGER PRIMARY KEY CHECK (seq >= 0),
  leaf BLOB NOT NULL CHECK (length(leaf) BETWEEN 2 AND 65535),
  leaf_hash BLOB NOT NULL UNIQUE CHECK (length(leaf_hash) = 32),
  type TEXT NOT NULL,
  at INTEGER NOT NULL
) STRICT;

CREATE TABLE entry_link (
  stream TEXT NOT NULL,
  n INTEGER NOT NULL CHECK (n >= 0),
  seq INTEGER NOT NULL REFERENCES entry (seq),
  PRIMARY KEY (stream, n)
) STRICT, WITHOUT ROWID;

CREATE TABLE node (
  level INTEGER NOT NULL CHECK (level >= 1),
  position INTEGER NOT NULL CHECK (position >= 0),
  hash BLOB NOT NULL CHECK (length(hash) = 32),
  PRIMARY KEY (level, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE checkpoint (
  size INTEGER PRIMARY KEY CHECK (size > 0),
  signature BLOB NOT NULL CHECK (length(signature) = 64),
  issued INTEGER NOT NULL
) STRICT;

CREATE TABLE cosignature (
  size INTEGER NOT NULL,
  name TEXT NOT NULL,
  line TEXT NOT NULL,
  PRIMARY KEY (size, name)
) STRICT, WITHOUT ROWID;

CREATE TABLE signing_key (
  from_size INTEGER PRIMARY KEY CHECK (from_size >= 0),
  vkey TEXT NOT NULL
) STRICT;

CREATE TABLE command (
  id TEXT PRIMARY KEY,
  by TEXT NOT NULL,
  mac BLOB NOT NULL,
  from_seq INTEGER NOT NULL,
  size INTEGER NOT NULL,
  at INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE sealed (
  seq INTEGER NOT NULL REFERENCES entry (seq),
  field TEXT NOT NULL,
  subject TEXT NOT NULL,
  iv BLOB NOT NULL CHECK (length(iv) = 12),
  ciphertext BLOB NOT NULL,
  PRIMARY KEY (seq, field)
) STRICT, WITHOUT ROWID;

-- Folded from the leaves and made again by a rebuild.
CREATE TABLE thing (
  n INTEGER PRIMARY KEY,
  id TEXT NOT NULL UNIQUE,
  kind TEXT NOT NULL,
  stream TEXT NOT NULL,
  status TEXT,
  stones INTEGER CHECK (stones >= 0),
  words TEXT NOT NULL,
  state TEXT NOT NULL
) STRICT;
CREATE INDEX thing_by_kind ON thing (kind, status, n);
CREATE INDEX thing_by_stream ON thing (stream, kind);

CREATE VIRTUAL TABLE find USING fts5 (words, content = 'thing', content_rowid = 'n', tokenize = 'trigram remove_diacritics 1');
CREATE TRIGGER find_insert AFTER INSERT ON thing BEGIN INSERT INTO find (rowid, words) VALUES (NEW.n, NEW.words); END;
CREATE TRIGGER find_update AFTER UPDATE OF words ON thing WHEN OLD.words <> NEW.words
BEGIN
  INSERT INTO find (find, rowid, words) VALUES ('delete', OLD.n, OLD.words);
  INSERT INTO find (rowid, words) VALUES (NEW.n, NEW.words);
END;
CREATE TRIGGER find_delete AFTER DELETE ON thing BEGIN INSERT INTO find (find, rowid, words) VALUES ('delete', OLD.n, OLD.words); END;

-- Rows are appended, never changed: UPDATE and DELETE are refused, and so are the two ways in which INSERT OR REPLACE walks round that.
CREATE TRIGGER entry_no_update BEFORE UPDATE ON entry BEGIN SELECT RAISE (ABORT, 'entries are never changed'); END;
CREATE TRIGGER entry_no_delete BEFORE DELETE ON entry BEGIN SELECT RAISE (ABORT, 'entries are never deleted'); END;
CREATE TRIGGER entry_no_replace BEFORE INSERT ON entry WHEN EXISTS (SELECT 1 FROM entry WHERE seq = NEW.seq OR leaf_hash = NEW.leaf_hash)
BEGIN SELECT RAISE (ABORT, 'this entry is written already'); END;
CREATE TRIGGER entry_contiguous BEFORE INSERT ON entry WHEN NEW.seq <> (SELECT COALESCE(MAX(seq) + 1, 0) FROM entry)
BEGIN SELECT RAISE (ABORT, 'entries follow one another without a gap'); END;

CREATE TRIGGER entry_link_no_update BEFORE UPDATE ON entry_link BEGIN SELECT RAISE (ABORT, 'links are never changed'); END;
CREATE TRIGGER entry_link_no_delete BEFORE DELETE ON entry_link BEGIN SELECT RAISE (ABORT, 'links are never deleted'); END;
CREATE TRIGGER entry_link_no_replace BEFORE INSERT ON entry_link WHEN EXISTS (SELECT 1 FROM entry_link WHERE stream = NEW.stream AND n = NEW.n)
BEGIN SELECT RAISE (ABORT, 'this place in the stream is taken'); END;
CREATE TRIGGER entry_link_contiguous BEFORE INSERT ON entry_link
WHEN NEW.n <> (SELECT COALESCE(MAX(n) + 1, 0) FROM entry_link WHERE stream = NEW.stream)
BEGIN SELECT RAISE (ABORT, 'a stream has no gap'); END;

CREATE TRIGGER node_no_update BEFORE UPDATE ON node BEGIN SELECT RAISE (ABORT, 'nodes are never changed'); END;
CREATE TRIGGER node_no_delete BEFORE DELETE ON node BEGIN SELECT RAISE (ABORT, 'nodes are never deleted'); END;
CREATE TRIGGER node_no_replace BEFORE INSERT ON node WHEN EXISTS (SELECT 1 FROM node WHERE level = NEW.level AND position = NEW.position)
BEGIN SELECT RAISE (ABORT, 'this node is written already'); END;

CREATE TRIGGER checkpoint_no_update BEFORE UPDATE ON checkpoint BEGIN SELECT RAISE (ABORT, 'checkpoints are never changed'); END;
CREATE TRIGGER checkpoint_no_delete BEFORE DELETE ON checkpoint BEGIN SELECT RAISE (ABORT, 'checkpoints are never deleted'); END;
CREATE TRIGGER checkpoint_no_replace BEFORE INSERT ON checkpoint WHEN EXISTS (SELECT 1 FROM checkpoint WHERE size >= NEW.size)
BEGIN SELECT RAISE (ABORT, 'checkpoints only grow'); END;

CREATE TRIGGER signing_key_no_update BEFORE UPDATE ON signing_key BEGIN SELECT RAISE (ABORT, 'keys are never changed'); END;
CREATE TRIGGER signing_key_no_delete BEFORE DELETE ON signing_key BEGIN SELECT RAISE (ABORT, 'keys are never deleted'); END;
CREATE TRIGGER signing_key_no_replace BEFORE INSERT ON signing_key WHEN EXISTS (SELECT 1 FROM signing_key WHERE from_size >= NEW.from_size)
BEGIN SELECT RAISE (ABORT, 'keys only follow one another'); END;

CREATE TRIGGER sealed_no_update BEFORE UPDATE ON sealed BEGIN SELECT RAISE (ABORT, 'sealed values are never changed'); END;
CREATE TRIGGER sealed_no_delete BEFORE DELETE ON sealed BEGIN SELECT RAISE (ABORT, 'sealed values are never deleted: erasure destroys their key'); END;
CREATE TRIGGER sealed_no_replace BEFORE INSERT ON sealed WHEN EXISTS (SELECT 1 FROM sealed WHERE seq = NEW.seq AND field = NEW.field)
BEGIN SELECT RAISE (ABORT, 'this value is sealed already'); END;
