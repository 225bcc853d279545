-- What the shop is known by for good, in its calendar too, wherever its file goes and whatever it is called.
INSERT OR IGNORE INTO setting (key, value) VALUES ('id', lower(hex(randomblob(16))));
