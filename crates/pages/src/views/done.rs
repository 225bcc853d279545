//! Writing down what was done: a point ticked off, something done with a pot; and taking it back.

use std::sync::Arc;

use askama::Template;
use axum::extract::{Form, Path, State};
use axum::http::HeaderValue;
use axum::http::header::SET_COOKIE;
use axum::response::Response;
use jiff::civil::Date;
use keep::{KeepError, Kept, Said, Served};
use store::{EntryId, SectionId, Store, StoreError, What};
use units::{Amount, Time};

use super::today::after;
use crate::App;
use crate::cookie::{REMEMBERED_SECONDS, WHO, set};
use crate::frame::{Frame, encoded, form_html};
use crate::guard::login::{local, to};
use crate::trouble::Trouble;
use crate::visitor::{Typed, Visitor};
use crate::words::{in_words, pot_among_others};

#[derive(Template)]
#[template(path = "done.html")]
struct Page {
    frame: Frame,
    machine: String,
    point: String,
    typed: Filled,
    /// The pots it may have come from: the number, what it is, whether it is chosen.
    pots: Vec<(i64, String, bool)>,
    wrong: Vec<(&'static str, String)>,
}

/// What stands in the fields of the form.
#[derive(Default)]
struct Filled {
    amount: String,
    day: String,
    who: String,
    note: String,
    hours: String,
    topped_up: bool,
}

impl Page {
    fn wrong_at(&self, field: &str) -> Option<&str> {
        self.wrong.iter().find(|(at, _)| *at == field).map(|(_, said)| said.as_str())
    }
}

/// The form for whatever the button alone cannot say.
pub(crate) async fn page(State(app): State<Arc<App>>, visitor: Visitor) -> Response {
    app.draw(visitor, |app, visitor| {
        let said = |name: &str| visitor.typed(name).unwrap_or_default().to_owned();
        form(app, visitor, said("machine"), said("point"), None, Vec::new())
    })
    .await
}

fn form(
    app: &Arc<App>,
    visitor: &Visitor,
    machine: String,
    point: String,
    typed: Option<&Typed>,
    wrong: Vec<(&'static str, String)>,
) -> Result<Response, Trouble> {
    let typed = |name: &str| typed.map_or_else(String::new, |typed| typed.joined(name));
    let now = app.kept_now()?;
    let there = now.shop.machines.iter().any(|one| one.name == machine && one.points.iter().any(|other| other.name == point));
    if !there {
        return Err(Trouble::NotFound(format!("This shop has no point “{point}” at a machine “{machine}”.")));
    }
    let chosen = typed("pot");
    let pots = now.shop.pots.iter().filter_map(|pot| {
        let SectionId(id) = now.described.section(&pot.at)?;
        Some((id, pot_among_others(pot, app.reference), chosen == id.to_string()))
    });
    let filled = Filled {
        amount: typed("amount"),
        day: typed("day"),
        who: Some(typed("who")).filter(|who| !who.is_empty()).or_else(|| visitor.who.clone()).unwrap_or_default(),
        note: typed("note"),
        hours: typed("hours"),
        topped_up: !typed("topped_up").is_empty(),
    };
    let page = Page {
        frame: Frame::new(app, visitor, "Today", format!("{machine}: {point}")),
        pots: pots.collect(),
        machine,
        point,
        typed: filled,
        wrong,
    };
    form_html(&page.wrong, &page)
}

/// Writes that points of a machine were served: those named, each by its chart unless more is said of the only one.
pub(crate) async fn serve(State(app): State<Arc<App>>, visitor: Visitor, Form(typed): Form<Typed>) -> Response {
    app.draw(visitor, move |app, visitor| {
        let machine = typed.joined("machine");
        let points: Vec<String> = typed.all("point").map(str::to_owned).collect();
        let again = |wrong| form(app, visitor, machine.clone(), points.first().cloned().unwrap_or_default(), Some(&typed), wrong);
        let mut said = match said(&typed) {
            Ok(said) => said,
            Err(wrong) => return again(wrong),
        };
        // The button alone does not ask who: whoever said so last on this device.
        let asks_who = typed.asks("who");
        if !asks_who {
            said.said.who.clone_from(&visitor.who);
        }
        let shop = app.source.shop()?;
        let worked = app.plan(&shop, shop.units)?;
        let now = app.now();
        let due: Vec<Option<Date>> = typed.all("due").map(|text| text.parse().ok()).collect();
        let serve = |(place, point): (usize, &String)| {
            let due = due.get(place).copied().flatten();
            Served { machine: machine.clone(), point: point.clone(), due, ..said.clone() }
        };
        let all: Vec<Served> = points.iter().enumerate().map(serve).collect();
        let write = |kept: &mut Kept<&mut Store>| kept.serve_points(&worked.report, &all, &now);
        match app.source.with(write).ok_or_else(Trouble::only_kept)?? {
            Ok(written) => {
                let mut response = to(after(app, &written));
                if asks_who {
                    response.headers_mut().insert(SET_COOKIE, remembered(app, said.said.who.as_deref()));
                }
                Ok(response)
            }
            Err(error @ KeepError::ToCome { .. }) => again(vec![("day", in_words(&error))]),
            Err(error) => Err(Trouble::from(error)),
        }
    })
    .await
}

/// The cookie that remembers what somebody is called, or that it was taken out of the form.
fn remembered(app: &App, who: Option<&str>) -> HeaderValue {
    match who {
        Some(who) => set(&app.settings, WHO, &encoded(who), REMEMBERED_SECONDS),
        None => set(&app.settings, WHO, "", 0),
    }
}

/// What was said of serving a point, or which fields cannot be read.
fn said(typed: &Typed) -> Result<Served, Vec<(&'static str, String)>> {
    let mut wrong = Vec::new();
    let mut served = Served { topped_up: !typed.joined("topped_up").is_empty(), ..Served::default() };
    read(typed, "amount", &mut wrong, |text| {
        Amount::parse(text).map(|amount| served.amount = Some(amount)).map_err(|error| error.to_string())
    });
    read(typed, "hours", &mut wrong, |text| {
        units::parse::<Time>(text).map(|hours| served.hours = Some(hours)).map_err(|error| error.to_string())
    });
    read(typed, "pot", &mut wrong, |text| {
        text.parse().map(|pot| served.pot = Some(SectionId(pot))).map_err(|_| "there is no such pot".to_owned())
    });
    read(typed, "day", &mut wrong, |text| {
        text.parse().map(|day| served.said.day = Some(day)).map_err(|_| "write year, month and day, such as 2026-03-01".to_owned())
    });
    let text = |name: &str| Some(typed.joined(name)).filter(|text| !text.is_empty());
    served.said.who = text("who");
    served.said.note = text("note");
    if wrong.is_empty() { Ok(served) } else { Err(wrong) }
}

fn read(typed: &Typed, name: &'static str, wrong: &mut Vec<(&'static str, String)>, take: impl FnOnce(&str) -> Result<(), String>) {
    let text = typed.joined(name);
    if !text.is_empty()
        && let Err(said) = take(&text)
    {
        wrong.push((name, in_words(&said)));
    }
}

/// Takes entries back.
pub(crate) async fn undo(State(app): State<Arc<App>>, visitor: Visitor, Form(typed): Form<Typed>) -> Response {
    app.draw(visitor, move |app, visitor| {
        let (now, said) = (app.now(), visitor.said());
        let entries = typed.all("entry").filter_map(|text| text.parse().ok());
        let all: Vec<What> = entries.map(|entry| What::Undone { entry: EntryId(entry) }).collect();
        app.kept(|kept| kept.write_all(&all, &said, &now))?;
        Ok(to(local(&app.settings, &typed.joined("back"))))
    })
    .await
}

/// Writes what was done with a pot.
pub(crate) async fn pot(
    State(app): State<Arc<App>>,
    Path((pot, doing)): Path<(i64, String)>,
    visitor: Visitor,
    Form(typed): Form<Typed>,
) -> Response {
    app.draw(visitor, move |app, visitor| {
        let id = SectionId(pot);
        let amount = typed.joined("amount");
        let needed = matches!(doing.as_str(), "counted" | "decanted");
        let amount = match Some(&amount).filter(|text| !text.is_empty()).map(|text| Amount::parse(text)).transpose() {
            Err(error) => {
                return super::pot::refused(app, visitor, id, &doing, &typed, &in_words(&error));
            }
            Ok(None) if needed => return super::pot::refused(app, visitor, id, &doing, &typed, "Say how much, such as 250 mL."),
            Ok(amount) => amount,
        };
        let what = match (doing.as_str(), amount) {
            ("opened", _) => What::Opened { pot: id },
            ("bought", amount) => What::Bought { pot: id, amount },
            ("discarded", amount) => What::Discarded { pot: id, amount },
            ("counted", Some(left)) => What::Counted { pot: id, left },
            ("decanted", Some(amount)) => match typed.joined("into").parse() {
                Ok(into) => What::Decanted { from: id, into: SectionId(into), amount },
                Err(_) => return super::pot::refused(app, visitor, id, &doing, &typed, "Choose the pot it goes into."),
            },
            _ => return Err(Trouble::NotFound("There is nothing of that kind to do with a pot.".to_owned())),
        };
        let said = Said { key: Some(typed.joined("mark")).filter(|mark| !mark.is_empty()), ..visitor.said() };
        let now = app.now();
        match app.source.with(|kept| kept.write(what, &said, &now)).ok_or_else(Trouble::only_kept)?? {
            Ok(_) => Ok(to(format!("{}/pot/{pot}", app.settings.base_path.as_str()))),
            Err(KeepError::Store(error @ (StoreError::OtherMeasure { .. } | StoreError::TooMuch(_)))) => {
                super::pot::refused(app, visitor, id, &doing, &typed, &in_words(&error))
            }
            Err(error) => Err(Trouble::from(error)),
        }
    })
    .await
}
