//! Entries of the log in words.

use schemars::JsonSchema;
use serde::Serialize;
use store::{Logged, SectionId, Store, StoreError, What};
use units::{Amount, System};

use crate::hours;

/// An entry of the log.
#[derive(Debug, Serialize, JsonSchema)]
pub struct LogRow {
    /// Its number.
    pub id: i64,
    /// The day, where the shop stands.
    pub day: String,
    /// The instant, in universal time.
    pub at: String,
    /// What was done.
    pub what: &'static str,
    /// Where, or with which pot.
    pub place: Option<String>,
    /// The pot it was taken from.
    pub pot: Option<String>,
    /// How much.
    pub amount: Option<String>,
    /// Whether nobody measured that, and it is the chart's dose.
    pub amount_supposed: bool,
    /// Key of the fluid.
    pub fluid: Option<String>,
    /// What the hour meter showed.
    pub hours: Option<f64>,
    /// Who did it.
    pub who: Option<String>,
    /// Anything to remember.
    pub note: Option<String>,
    /// The entry it takes back.
    pub undoes: Option<i64>,
    /// The entry that takes it back.
    pub undone_by: Option<i64>,
}

impl LogRow {
    /// The amount, and whether it is only supposed.
    #[must_use]
    pub fn how_much(&self) -> Option<String> {
        let amount = self.amount.as_ref()?;
        Some(if self.amount_supposed { format!("{amount} (supposed by the chart)") } else { amount.clone() })
    }
}

/// An entry in words; machines, points and pots by what they are called now.
///
/// # Errors
/// Where the store cannot be read.
pub fn row(store: &Store, logged: &Logged, units: System) -> Result<LogRow, StoreError> {
    let name = |section: SectionId| store.section(section).map(|row| row.name());
    let place = |section: SectionId| {
        let row = store.section(section)?;
        Ok::<_, StoreError>(match row.parent.filter(|parent| row.kind == "point" && *parent != SectionId::WHOLE) {
            Some(parent) => format!("{}/{}", name(parent)?, row.name()),
            None => row.name(),
        })
    };
    let entry = &logged.entry;
    let mut undoes = None;
    let (what, at, pot, amount): (_, Option<SectionId>, Option<SectionId>, Option<Amount>) = match entry.what {
        What::Applied { point, pot, amount } => ("applied", Some(point), pot, amount),
        What::ToppedUp { point, pot, amount } => ("topped up", Some(point), pot, amount),
        What::Opened { pot } => ("opened", Some(pot), None, None),
        What::Decanted { from, into, amount } => ("decanted", Some(into), Some(from), Some(amount)),
        What::Counted { pot, left } => ("counted", Some(pot), None, Some(left)),
        What::Bought { pot, amount } => ("bought", Some(pot), None, amount),
        What::Discarded { pot, amount } => ("discarded", Some(pot), None, amount),
        What::MeterRead { machine, .. } => ("meter read", Some(machine), None, None),
        What::Undone { entry } => {
            undoes = Some(entry.0);
            ("undone", None, None, None)
        }
    };
    let read = if let What::MeterRead { hours, .. } = entry.what { Some(hours) } else { entry.hours };
    Ok(LogRow {
        id: logged.id.0,
        day: entry.when.day().to_string(),
        at: entry.when.at().to_string(),
        what,
        place: at.map(place).transpose()?,
        pot: pot.map(name).transpose()?,
        amount: amount.map(|amount| amount.show(units)),
        amount_supposed: entry.supposed,
        fluid: entry.fluid.clone(),
        hours: read.map(hours),
        who: entry.who.clone(),
        note: entry.note.clone(),
        undoes,
        undone_by: logged.undone_by.map(|by| by.0),
    })
}
