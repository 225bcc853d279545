//! The buying list: the ladder with packs and prices, what is owned, what to buy again.

use askama::Template;
use planner::report::RungRow;
use planner::round::BuyRow;
use planner::words::places;
use shop::Pot;

use super::{Head, Paper, Sheet, unbroken};
use crate::views::cupboard::pack;
use crate::words::{self, percent};

#[derive(Template)]
#[template(path = "paper/buying.html")]
struct Page<'a> {
    head: Head,
    currency: &'a str,
    rungs: Vec<Rung<'a>>,
    owned: Vec<Owned<'a>>,
    again: Vec<(&'a BuyRow, String)>,
    unserved: usize,
}

struct Rung<'a> {
    row: &'a RungRow,
    name: String,
    /// What it costs together with all before it.
    so_far: Option<String>,
    serves: String,
    share: String,
}

struct Owned<'a> {
    name: String,
    left: String,
    place: &'a str,
}

impl Paper<'_> {
    /// What to buy, what is owned, what to buy again.
    pub(super) fn buying(&self) -> Result<String, askama::Error> {
        let report = &self.worked.report;
        let mut so_far = 0.0;
        let rungs = report.ladder.iter().map(|row| {
            so_far += row.pack.as_ref().map_or(0.0, |pack| pack.price);
            let wholes = |needs| places(&report.needs, needs).into_iter().map(|(whole, _)| whole);
            let mut served: Vec<&str> = Vec::new();
            wholes(&row.needs).chain(wholes(&row.betters)).for_each(|whole| {
                if !served.contains(&whole) {
                    served.push(whole);
                }
            });
            Rung {
                name: unbroken(&row.name),
                so_far: row.pack.as_ref().map(|_| format!("{so_far:.2}")),
                serves: served.join(", "),
                share: percent(self.worked.share(row.total)),
                row,
            }
        });
        let day = self.worked.day.as_ref().and_then(|day| day.as_ref().ok());
        Page {
            head: self.head_of(Sheet::Buying),
            currency: &report.shop.currency,
            rungs: rungs.collect(),
            owned: self.worked.shop.pots.iter().map(|pot| self.owned(pot)).collect(),
            again: day.map_or_else(Vec::new, |day| day.cupboard.buy.iter().map(|row| (row, pack(row))).collect()),
            unserved: report.unserved.len(),
        }
        .render()
    }

    fn owned<'a>(&self, pot: &'a Pot) -> Owned<'a> {
        let left = pot.left.map_or_else(String::new, |left| left.show(self.worked.units));
        Owned {
            name: unbroken(&words::pot(pot, self.reference)),
            left: if pot.is_empty() { "empty".to_owned() } else { left },
            place: pot.place.as_deref().unwrap_or_default(),
        }
    }
}
