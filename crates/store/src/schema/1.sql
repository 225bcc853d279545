-- The description: every section of a shop file, with an identity of its own that outlives its name.
CREATE TABLE section (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    parent INTEGER REFERENCES section (id),
    kind TEXT NOT NULL,
    shape TEXT NOT NULL CHECK (shape IN ('whole', 'table', 'list', 'inline', 'unwritten')),
    position INTEGER NOT NULL,
    before TEXT NOT NULL DEFAULT '',
    after TEXT NOT NULL DEFAULT '',
    gone INTEGER -- when it was taken out, in milliseconds since 1970 UTC; the log may still speak of it
) STRICT;
CREATE INDEX section_parent ON section (parent, position);
CREATE INDEX section_kind ON section (kind) WHERE gone IS NULL;

-- What is said in a section: key and value as they stand in a shop file, with the comments around them.
CREATE TABLE said (
    section INTEGER NOT NULL REFERENCES section (id),
    key TEXT NOT NULL,
    position INTEGER NOT NULL,
    value TEXT NOT NULL,
    before TEXT NOT NULL DEFAULT '',
    after TEXT NOT NULL DEFAULT '',
    PRIMARY KEY (section, key)
) STRICT, WITHOUT ROWID;

INSERT INTO section (id, kind, shape, position) VALUES (1, '', 'whole', 0);

-- The log. It only grows: what was wrong is reversed by another entry.
CREATE TABLE log (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    at INTEGER NOT NULL, -- milliseconds since 1970 UTC
    day TEXT NOT NULL, -- the day it was where the shop stands
    kind TEXT NOT NULL,
    machine INTEGER REFERENCES section (id),
    point INTEGER REFERENCES section (id),
    pot INTEGER REFERENCES section (id),
    into_pot INTEGER REFERENCES section (id),
    fluid TEXT,
    measure TEXT CHECK (measure IN ('volume', 'mass', 'length', 'pieces')),
    amount INTEGER, -- in nanolitres, micrograms, nanometres or millionths of a piece, so that sums are exact
    hours REAL, -- the hour meter, in seconds
    due TEXT, -- the day on which the point was due
    who TEXT,
    note TEXT,
    reverses INTEGER REFERENCES log (id),
    key TEXT, -- the writer's own mark, so that the same message twice is one entry
    CHECK ((measure IS NULL) = (amount IS NULL)),
    CHECK (amount >= 0),
    CHECK ((kind = 'undone') = (reverses IS NOT NULL))
) STRICT;
CREATE INDEX log_at ON log (at);
CREATE INDEX log_machine ON log (machine, at) WHERE machine IS NOT NULL;
CREATE INDEX log_point ON log (point, kind, at) WHERE point IS NOT NULL;
CREATE INDEX log_pot ON log (pot, kind, at) WHERE pot IS NOT NULL;
CREATE INDEX log_into_pot ON log (into_pot, at) WHERE into_pot IS NOT NULL;
CREATE INDEX log_meter ON log (machine, at) WHERE hours IS NOT NULL;
CREATE INDEX log_opened ON log (pot, at) WHERE kind = 'opened';
CREATE INDEX log_fluid ON log (fluid, day) WHERE fluid IS NOT NULL;
CREATE UNIQUE INDEX log_reverses ON log (reverses) WHERE reverses IS NOT NULL;
CREATE UNIQUE INDEX log_key ON log (key) WHERE key IS NOT NULL;

CREATE TRIGGER log_keeps_its_entries BEFORE UPDATE ON log
BEGIN
    SELECT RAISE(ABORT, 'the log only grows: reverse an entry instead of changing it');
END;
CREATE TRIGGER log_loses_nothing BEFORE DELETE ON log
BEGIN
    SELECT RAISE(ABORT, 'the log only grows: reverse an entry instead of deleting it');
END;

-- Which entry served a point that was due; beside the log, so that an entry undone leaves the point due again.
CREATE TABLE tick (
    point INTEGER NOT NULL REFERENCES section (id),
    due TEXT NOT NULL,
    entry INTEGER NOT NULL REFERENCES log (id),
    PRIMARY KEY (point, due)
) STRICT, WITHOUT ROWID;

-- What the log adds to or takes from each pot since its last count: an index over the log, remade from it when in doubt.
CREATE TABLE tally (
    pot INTEGER PRIMARY KEY REFERENCES section (id),
    counted INTEGER REFERENCES log (id),
    counted_at INTEGER,
    measure TEXT,
    amount INTEGER NOT NULL
) STRICT;

CREATE TABLE setting (
    key TEXT PRIMARY KEY,
    value TEXT NOT NULL
) STRICT, WITHOUT ROWID;
