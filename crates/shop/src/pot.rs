//! What stands in the cupboard already.

use jiff::civil::Date;
use reference::Reference;
use units::{Amount, Quantity};

use crate::problem::{Problems, Span};
use crate::section::Section;

/// One container in the cupboard.
#[derive(Debug, Clone)]
pub struct Pot {
    /// The fluid's key.
    pub fluid: String,
    /// What the user calls it.
    pub name: Option<String>,
    /// What is left in it.
    pub left: Option<Amount>,
    /// What it held when it was full.
    pub size: Option<Amount>,
    /// The day it was bought.
    pub bought: Option<Date>,
    /// The day it was opened.
    pub opened: Option<Date>,
    /// The last day its label says it is good.
    pub keeps_until: Option<Date>,
    /// Where it stands.
    pub place: Option<String>,
    /// The maker's batch number, as printed on it.
    pub lot: Option<String>,
    /// Where it stands in the file.
    pub at: Span,
}

impl Pot {
    /// What can be said about a pot, in the order it is usually written.
    pub const KEYS: [&'static str; 9] = ["fluid", "name", "left", "size", "bought", "opened", "keeps_until", "place", "lot"];

    /// Whether nothing is left in it.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.left.is_some_and(is_nothing)
    }

    /// Reads one `[[pot]]`.
    pub(crate) fn read(mut section: Section<'_>, reference: &Reference, problems: &mut Problems) -> Option<Self> {
        let fluid = section.text("fluid", problems);
        if fluid.is_none() && !section.has("fluid") {
            problems.add(section.at.clone(), "a pot has no `fluid`", "Name what is in it, such as `fluid = \"slideway-68\"`.");
        }
        let fluid = fluid.and_then(|said| crate::point::fluid(said, reference, problems));
        let name = section.text("name", problems).map(|said| said.value);
        let left = section.amount("left", problems).map(|said| said.value);
        let size = section.amount("size", problems);
        if let Some(said) = size.as_ref().filter(|said| is_nothing(said.value)) {
            problems.add(said.at.clone(), "`size` is zero", "Give what the pot holds when it is full, such as `size = \"500 mL\"`.");
        }
        let pot = Self {
            fluid: String::new(),
            name,
            left,
            size: size.map(|said| said.value),
            bought: section.date("bought", problems).map(|said| said.value),
            opened: section.date("opened", problems).map(|said| said.value),
            keeps_until: section.date("keeps_until", problems).map(|said| said.value),
            place: section.text("place", problems).map(|said| said.value),
            lot: section.text("lot", problems).map(|said| said.value),
            at: section.at.clone(),
        };
        section.close(problems);
        Some(Self { fluid: fluid?, ..pot })
    }
}

fn is_nothing(amount: Amount) -> bool {
    let number = match amount {
        Amount::Volume(volume) => volume.base(),
        Amount::Mass(mass) => mass.base(),
        Amount::Length(length) => length.base(),
        Amount::Pieces(count) => count,
    };
    number <= 0.0
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Kinds, Problem, read};
    use jiff::civil::date;

    fn pots(text: &str) -> Result<Vec<Pot>, Vec<Problem>> {
        let text = format!("[[machine]]\ntemplate = \"bench lathe\"\n[[pot]]\nfluid = \"penetrating\"\n{text}");
        read(text.as_bytes(), Kinds { points: &[], jobs: &[] }, Reference::embedded()).map(|shop| shop.pots)
    }

    #[test]
    fn a_day_is_written_with_or_without_quotation_marks() {
        // ISO 8601-1 writes a calendar date year-month-day; TOML has the same form bare.
        for text in ["opened = 2026-03-01", "opened = \"2026-03-01\""] {
            let pots = pots(text).unwrap();
            assert_eq!(pots.first().and_then(|pot| pot.opened), Some(date(2026, 3, 1)), "{text}");
        }
    }

    #[test]
    fn a_day_that_is_none_is_refused_with_the_way_out() {
        // February has 28 days in 2026 (Gregorian calendar).
        for text in ["opened = \"2026-02-29\"", "opened = \"spring\"", "bought = 2026-03-01T08:00:00Z", "keeps_until = \"3/2027\""] {
            let problems = pots(text).unwrap_err();
            assert!(problems.iter().any(|problem| problem.mend.contains("2026-03-01")), "{text}: {problems:?}");
        }
    }

    #[test]
    fn a_pot_of_no_size_is_refused() {
        assert!(pots("size = \"0 mL\"").unwrap_err().iter().any(|problem| problem.what.contains("size")));
        assert!(pots("size = \"1 L\"\nleft = \"0 mL\"").unwrap().first().is_some_and(Pot::is_empty));
    }
}
