-- Keys of sealed values, and nothing else: a key per customer and member of staff; a key per job, wrapped by its customer's.
-- The wrapping is the link between the two. Destroying a row here is what erasure does.
CREATE TABLE subject_key (
  subject TEXT PRIMARY KEY,
  wrapped_by TEXT,
  iv BLOB,
  key BLOB NOT NULL,
  CHECK ((wrapped_by IS NULL AND iv IS NULL AND length(key) = 32) OR (wrapped_by IS NOT NULL AND length(iv) = 12 AND length(key) = 48))
) STRICT, WITHOUT ROWID;
CREATE INDEX subject_key_wrapped ON subject_key (wrapped_by);
