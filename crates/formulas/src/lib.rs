//! The trade's formulas, one file a chapter.
