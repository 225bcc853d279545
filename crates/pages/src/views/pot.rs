//! One pot: what is in it, what becomes of it, what was done with it.

use std::sync::Arc;

use askama::Template;
use axum::extract::{Path, State};
use axum::response::Response;
use planner::round::{Basis, Expiry, PotRow};
use shop::Pot;
use store::SectionId;

use super::log::{Told, entries};
use crate::App;
use crate::frame::{Frame, form_html};
use crate::source::Now;
use crate::trouble::Trouble;
use crate::visitor::{Typed, Visitor};
use crate::words::{pot_among_others, sentence};

#[derive(Template)]
#[template(path = "pot.html")]
struct Page<'a> {
    frame: Frame,
    id: i64,
    key: &'a str,
    fluid: String,
    about: &'a str,
    /// What is known of it, and the part of its fluid's page that says how that came about.
    facts: Vec<(&'static str, String, Option<&'static str>)>,
    /// What can be done with it: the word, the heading, what is asked, whether an answer is needed.
    deeds: [Deed; 4],
    /// Other pots of the same fluid, to fill some into.
    others: Vec<(i64, String)>,
    into: String,
    opened: bool,
    entries: Vec<Told>,
    wrong: Option<(String, String)>,
    amount: String,
    mark: String,
}

struct Deed {
    word: &'static str,
    title: &'static str,
    asks: &'static str,
    button: &'static str,
}

const DEEDS: [Deed; 4] = [
    Deed { word: "counted", title: "Look what is left", asks: "What is left in it", button: "Write it down" },
    Deed { word: "bought", title: "More was bought", asks: "How much came in", button: "Write it down" },
    Deed { word: "decanted", title: "Fill some into another pot", asks: "How much", button: "Write it down" },
    Deed { word: "discarded", title: "Some was got rid of", asks: "How much; left empty: all of it", button: "Write it down" },
];

impl Page<'_> {
    fn wrong_at(&self, word: &str) -> Option<&str> {
        self.wrong.as_ref().filter(|(at, _)| at == word).map(|(_, said)| said.as_str())
    }

    fn amount_at(&self, word: &str) -> &str {
        if self.wrong_at(word).is_some() { &self.amount } else { "" }
    }
}

pub(crate) async fn page(State(app): State<Arc<App>>, Path(id): Path<i64>, visitor: Visitor) -> Response {
    app.draw(visitor, move |app, visitor| draw(app, visitor, SectionId(id), None)).await
}

/// The page again, with what was typed and what is wrong with it.
pub(crate) fn refused(
    app: &Arc<App>,
    visitor: &Visitor,
    id: SectionId,
    doing: &str,
    typed: &Typed,
    said: &str,
) -> Result<Response, Trouble> {
    draw(app, visitor, id, Some((doing, typed, said)))
}

fn draw(app: &Arc<App>, visitor: &Visitor, id: SectionId, wrong: Option<(&str, &Typed, &str)>) -> Result<Response, Trouble> {
    let now = app.kept_now()?;
    let (place, pot) = find(&now, id).ok_or_else(|| Trouble::NotFound("There is no such pot in the cupboard any more.".to_owned()))?;
    let fluid = app.reference.name_of(&pot.fluid);
    let frame = Frame::new(app, visitor, "Cupboard", pot.name.clone().unwrap_or_else(|| sentence(&fluid)));
    let worked = app.plan(&now.shop, frame.units)?;
    let row = match &worked.day {
        Some(Ok(day)) => day.cupboard.pots.iter().find(|row| row.pot == place + 1),
        _ => None,
    };
    let (entries, _) = app.stored(|store| entries(store, Some(id), None, frame.units))?;
    let others = now.shop.pots.iter().filter(|other| other.fluid == pot.fluid).filter_map(|other| {
        let SectionId(other_id) = now.described.section(&other.at)?;
        (other_id != id.0).then(|| (other_id, pot_among_others(other, app.reference)))
    });
    let page = Page {
        id: id.0,
        key: &pot.fluid,
        about: app.reference.fluid(&pot.fluid).map_or("", |fluid| fluid.about.as_str()),
        facts: facts(&now, id, pot, row, &frame),
        deeds: DEEDS,
        others: others.collect(),
        into: wrong.map(|(_, typed, _)| typed.joined("into")).unwrap_or_default(),
        opened: pot.opened.is_some() || now.state.pots.get(&id).is_some_and(|state| state.opened.is_some()),
        entries,
        amount: wrong.map(|(_, typed, _)| typed.joined("amount")).unwrap_or_default(),
        wrong: wrong.map(|(doing, _, said)| (doing.to_owned(), said.to_owned())),
        mark: format!("{}-{}", id.0, app.now().timestamp().as_millisecond()),
        fluid,
        frame,
    };
    form_html(page.wrong.as_slice(), &page)
}

/// A pot of the cupboard, with its place in it.
fn find(now: &Now, id: SectionId) -> Option<(usize, &Pot)> {
    now.shop.pots.iter().enumerate().find(|(_, pot)| now.described.section(&pot.at) == Some(id))
}

fn facts(now: &Now, id: SectionId, pot: &Pot, row: Option<&PotRow>, frame: &Frame) -> Vec<(&'static str, String, Option<&'static str>)> {
    let state = now.state.pots.get(&id);
    let left = pot.left.map(|left| {
        let counted = state.and_then(|state| state.counted).map_or("by what was said", |_| "by the last count and what was taken since");
        let short = if state.and_then(|state| state.left).is_some_and(|left| left.short) {
            "; more was taken out than was in, so count it"
        } else {
            ""
        };
        format!("{} ({counted}{short})", left.show(frame.units))
    });
    let used = row.and_then(|row| {
        let by = match row.by? {
            Basis::Log => "by the log",
            Basis::Plan => "by what the plan reckons a year takes",
        };
        row.empty_on.map(|day| format!("about {day}, {by}"))
    });
    let good = row.and_then(|row| {
        let by = match row.expires_by? {
            Expiry::Printed => "printed on it",
            Expiry::Opened => "since it was opened",
            Expiry::OnceOpened => "once it is opened",
            Expiry::Bought => "since it was bought",
        };
        row.expires_on.map(|day| format!("{day}, {by}"))
    });
    let known = [
        ("Left", left.or_else(|| Some("nobody said".to_owned())), None),
        ("Holds, full", pot.size.map(|size| size.show(frame.units)), None),
        ("Used up", used, Some("forecast")),
        ("Good until", good.or_else(|| pot.keeps_until.map(|day| day.to_string())), Some("known")),
        ("Bought", pot.bought.map(|day| day.to_string()), None),
        ("Opened", pot.opened.map(|day| day.to_string()), None),
        ("Stands", pot.place.clone(), None),
        ("Batch", pot.lot.clone(), None),
    ];
    known.into_iter().filter_map(|(what, value, behind)| Some((what, value?, behind))).collect()
}
