-- Indexes for what is asked of a long ledger: who wrote it, of what kind it is, what corrects it, and whose sealed values they are.
-- The two columns are read out of the leaf itself, so that there is no second place where they could stand otherwise.
ALTER TABLE entry ADD COLUMN writer TEXT GENERATED ALWAYS AS (json_extract(CAST(leaf AS TEXT), '$.by')) VIRTUAL;
ALTER TABLE entry ADD COLUMN corrects INTEGER GENERATED ALWAYS AS (CASE type WHEN 'corrected' THEN json_extract(CAST(leaf AS TEXT), '$.data.seq') END) VIRTUAL;
CREATE INDEX entry_by_type ON entry (type, seq);
CREATE INDEX entry_by_writer ON entry (writer, seq);
CREATE INDEX entry_by_corrected ON entry (corrects, seq) WHERE corrects IS NOT NULL;
CREATE INDEX sealed_by_subject ON sealed (subject, field, seq);
