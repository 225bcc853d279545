-- Whether an amount was not measured but is what the chart says.
ALTER TABLE log ADD COLUMN supposed INTEGER NOT NULL DEFAULT 0 CHECK (supposed IN (0, 1));
