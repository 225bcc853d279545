//! Entries of the log, and how they stand in its rows.

use jiff::Timestamp;
use jiff::civil::Date;
use rusqlite::Row;
use units::{Amount, Quantity, Time};

use crate::measure::from_whole;
use crate::{EntryId, Moment, SectionId};

/// Something that was done, to be written.
#[derive(Debug, Clone, PartialEq)]
pub struct Entry {
    /// When it was done.
    pub when: Moment,
    /// What was done.
    pub what: What,
    /// The fluid's key, where the writer knows it; it outlives the pot and makes the year's use.
    pub fluid: Option<String>,
    /// Whether nobody measured the amount: it is what the chart says, and the pot is taken to have given it.
    pub supposed: bool,
    /// The day on which the point was due, where this serves a round. Of two entries for the same day only the first is written.
    pub due: Option<Date>,
    /// What the machine's hour meter showed.
    pub hours: Option<Time>,
    /// Who did it.
    pub who: Option<String>,
    /// Anything to remember.
    pub note: Option<String>,
    /// The writer's own mark for this entry: what comes twice with the same mark is written once.
    pub key: Option<String>,
}

impl Entry {
    /// An entry that says no more than what and when.
    #[must_use]
    pub fn new(when: Moment, what: What) -> Self {
        Self { when, what, fluid: None, supposed: false, due: None, hours: None, who: None, note: None, key: None }
    }
}

/// What was done.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum What {
    /// A point was lubricated.
    Applied {
        /// Which.
        point: SectionId,
        /// Out of which pot.
        pot: Option<SectionId>,
        /// How much.
        amount: Option<Amount>,
    },
    /// A bath or a cup was filled up.
    ToppedUp {
        /// Which point.
        point: SectionId,
        /// Out of which pot.
        pot: Option<SectionId>,
        /// How much.
        amount: Option<Amount>,
    },
    /// A pot was opened.
    Opened {
        /// Which.
        pot: SectionId,
    },
    /// Some of a pot was filled into another.
    Decanted {
        /// Out of which.
        from: SectionId,
        /// Into which.
        into: SectionId,
        /// How much.
        amount: Amount,
    },
    /// Somebody looked what is left in a pot.
    Counted {
        /// Which.
        pot: SectionId,
        /// What is left.
        left: Amount,
    },
    /// A pot was bought, or one more of the same.
    Bought {
        /// Which.
        pot: SectionId,
        /// What came in; nothing where the pot's own `left` says it.
        amount: Option<Amount>,
    },
    /// Something of a pot was got rid of.
    Discarded {
        /// Which.
        pot: SectionId,
        /// How much; all of it when nothing is said.
        amount: Option<Amount>,
    },
    /// A machine's hour meter was read.
    MeterRead {
        /// Which.
        machine: SectionId,
        /// What it showed.
        hours: Time,
    },
    /// An entry was reversed; written by [`Store::undo`](crate::Store::undo).
    Undone {
        /// Which.
        entry: EntryId,
    },
}

/// An entry as it stands in the log.
#[derive(Debug, Clone, PartialEq)]
pub struct Logged {
    /// Its number; later entries have higher ones.
    pub id: EntryId,
    /// What was written.
    pub entry: Entry,
    /// The entry that reverses it.
    pub undone_by: Option<EntryId>,
}

/// What became of an entry.
#[derive(Debug, Clone, PartialEq)]
pub enum Written {
    /// It was written.
    New(Logged),
    /// It, or another that serves the same, was there; this is the first, with who and when.
    Already(Logged),
}

impl Written {
    /// The entry that is in the log now.
    #[must_use]
    pub fn logged(&self) -> &Logged {
        match self {
            Self::New(logged) | Self::Already(logged) => logged,
        }
    }
}

/// What happened, taken apart into the columns of a row.
#[derive(Default)]
pub(crate) struct Columns {
    pub kind: &'static str,
    pub machine: Option<SectionId>,
    pub point: Option<SectionId>,
    pub pot: Option<SectionId>,
    pub into: Option<SectionId>,
    pub amount: Option<Amount>,
    pub hours: Option<Time>,
    pub reverses: Option<EntryId>,
}

impl From<What> for Columns {
    fn from(what: What) -> Self {
        let none = Self::default();
        match what {
            What::Applied { point, pot, amount } => Self { kind: "applied", point: Some(point), pot, amount, ..none },
            What::ToppedUp { point, pot, amount } => Self { kind: "topped up", point: Some(point), pot, amount, ..none },
            What::Opened { pot } => Self { kind: "opened", pot: Some(pot), ..none },
            What::Decanted { from, into, amount } => {
                Self { kind: "decanted", pot: Some(from), into: Some(into), amount: Some(amount), ..none }
            }
            What::Counted { pot, left } => Self { kind: "counted", pot: Some(pot), amount: Some(left), ..none },
            What::Bought { pot, amount } => Self { kind: "bought", pot: Some(pot), amount, ..none },
            What::Discarded { pot, amount } => Self { kind: "discarded", pot: Some(pot), amount, ..none },
            What::MeterRead { machine, hours } => Self { kind: "meter read", machine: Some(machine), hours: Some(hours), ..none },
            What::Undone { entry } => Self { kind: "undone", reverses: Some(entry), ..none },
        }
    }
}

/// The columns that [`from_row`] reads, in its order.
pub(crate) const ROW: &str = "log.id, log.at, log.day, log.kind, log.machine, log.point, log.pot, log.into_pot, log.fluid, log.measure,
    log.amount, log.hours, log.due, log.who, log.note, log.reverses, log.key,
    log.supposed, (SELECT later.id FROM log AS later WHERE later.reverses = log.id)";

pub(crate) fn from_row(row: &Row<'_>) -> rusqlite::Result<Logged> {
    let section = |column| row.get::<_, Option<i64>>(column).map(|id| id.map(SectionId));
    let needed = |column| row.get(column).map(SectionId);
    let amount = row.get::<_, Option<String>>(9)?.zip(row.get(10)?).map(|(measure, whole)| from_whole(&measure, whole));
    let hours = row.get::<_, Option<f64>>(11)?.map(Time::from_base);
    let kind: String = row.get(3)?;
    let no_amount = || rusqlite::Error::InvalidColumnType(10, "amount".to_owned(), rusqlite::types::Type::Null);
    let what = match kind.as_str() {
        "applied" => What::Applied { point: needed(5)?, pot: section(6)?, amount },
        "topped up" => What::ToppedUp { point: needed(5)?, pot: section(6)?, amount },
        "opened" => What::Opened { pot: needed(6)? },
        "decanted" => What::Decanted { from: needed(6)?, into: needed(7)?, amount: amount.ok_or_else(no_amount)? },
        "counted" => What::Counted { pot: needed(6)?, left: amount.ok_or_else(no_amount)? },
        "bought" => What::Bought { pot: needed(6)?, amount },
        "discarded" => What::Discarded { pot: needed(6)?, amount },
        "meter read" => What::MeterRead { machine: needed(4)?, hours: Time::from_base(row.get(11)?) },
        _ => What::Undone { entry: EntryId(row.get(15)?) },
    };
    let entry = Entry {
        when: Moment::new(instant(row.get(1)?), day(row.get(2)?)),
        what,
        fluid: row.get(8)?,
        supposed: row.get(17)?,
        due: row.get::<_, Option<String>>(12)?.map(day),
        hours: hours.filter(|_| !matches!(what, What::MeterRead { .. })),
        who: row.get(13)?,
        note: row.get(14)?,
        key: row.get(16)?,
    };
    Ok(Logged { id: EntryId(row.get(0)?), entry, undone_by: row.get::<_, Option<i64>>(18)?.map(EntryId) })
}

/// The instant of a row; only the store writes rows, and it writes what it reads.
pub(crate) fn instant(milliseconds: i64) -> Timestamp {
    Timestamp::from_millisecond(milliseconds).unwrap_or_default()
}

/// The day of a row.
pub(crate) fn day(written: String) -> Date {
    written.parse().unwrap_or_default()
}
