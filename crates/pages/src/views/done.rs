//! Writing down what was done: a point ticked off, a pot opened, an hour meter read; and taking it back.

use std::sync::Arc;

use askama::Template;
use axum::extract::{Form, Path, State};
use axum::http::HeaderValue;
use axum::http::header::SET_COOKIE;
use axum::response::Response;
use jiff::civil::Date;
use keep::{KeepError, Kept, Said, Served, hours};
use store::{EntryId, Logged, SectionId, Store, StoreError, What, Written};
use units::{Amount, System, Time};

use crate::App;
use crate::cookie::{REMEMBERED_SECONDS, WHO, set};
use crate::frame::{Frame, encoded, form_html};
use crate::guard::login::{local, to};
use crate::trouble::Trouble;
use crate::visitor::{Typed, Visitor};

/// An entry of the log in words.
pub(crate) struct Told {
    pub entry: i64,
    pub day: Date,
    /// What was done, where, and how much.
    pub what: String,
    /// Whatever else was said of it.
    pub more: String,
    /// It can be taken back.
    pub stands: bool,
}

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

#[derive(Template)]
#[template(path = "meters.html")]
struct Meters {
    frame: Frame,
    /// Each machine with its number, what its meter showed last, and what was typed.
    machines: Vec<(i64, String, String, String)>,
    wrong: Vec<(i64, String)>,
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

impl Meters {
    fn is_wrong(&self, machine: &i64) -> bool {
        self.wrong.iter().any(|(at, _)| at == machine)
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
    let now = app.source.now().ok_or_else(Trouble::only_kept)??;
    let there = now.shop.machines.iter().any(|one| one.name == machine && one.points.iter().any(|other| other.name == point));
    if !there {
        return Err(Trouble::NotFound(format!("This shop has no point “{point}” at a machine “{machine}”.")));
    }
    let chosen = typed("pot");
    let pots = now.shop.pots.iter().filter_map(|pot| {
        let SectionId(id) = now.described.section(&pot.at)?;
        let fluid = app.reference.name_of(&pot.fluid);
        Some((id, pot.name.as_ref().map_or_else(|| fluid.clone(), |name| format!("{name}: {fluid}")), chosen == id.to_string()))
    });
    let filled = Filled {
        amount: typed("amount"),
        day: typed("day"),
        who: Some(typed("who")).filter(|who| !who.is_empty()).or_else(|| visitor.who.clone()).unwrap_or_default(),
        note: typed("note"),
        hours: typed("hours"),
        topped_up: !typed("topped_up").is_empty(),
    };
    form_html(
        !wrong.is_empty(),
        &Page {
            frame: Frame::new(app, visitor, "Today", format!("{machine}: {point}")),
            pots: pots.collect(),
            machine,
            point,
            typed: filled,
            wrong,
        },
    )
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
            Err(error @ KeepError::ToCome { .. }) => again(vec![("day", crate::words::sentence(&format!("{error}.")))]),
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
        wrong.push((name, crate::form::quoted(&crate::words::sentence(&format!("{said}.")))));
    }
}

/// Today, with what was written at the top, and what somebody had written before.
fn after(app: &App, written: &[Written]) -> String {
    let said = |one: &Written| match one {
        Written::New(logged) => format!("entry={}", logged.id.0),
        Written::Already(logged) => format!("already={}", logged.id.0),
    };
    let said: Vec<String> = written.iter().map(said).collect();
    format!("{}/?{}", app.settings.base_path.as_str(), said.join("&")).trim_end_matches('?').to_owned()
}

/// Takes entries back.
pub(crate) async fn undo(State(app): State<Arc<App>>, visitor: Visitor, Form(typed): Form<Typed>) -> Response {
    app.draw(visitor, move |app, visitor| {
        let (now, said) = (app.now(), by(visitor));
        let entries = typed.all("entry").filter_map(|text| text.parse().ok());
        let all: Vec<What> = entries.map(|entry| What::Undone { entry: EntryId(entry) }).collect();
        app.source.with(|kept| kept.write_all(&all, &said, &now)).ok_or_else(Trouble::only_kept)???;
        Ok(to(local(&app.settings, &typed.joined("back"))))
    })
    .await
}

/// The hour meters, to be read.
pub(crate) async fn meters(State(app): State<Arc<App>>, visitor: Visitor) -> Response {
    app.draw(visitor, |app, visitor| meters_form(app, visitor, &Typed::default(), Vec::new())).await
}

fn meters_form(app: &Arc<App>, visitor: &Visitor, typed: &Typed, wrong: Vec<(i64, String)>) -> Result<Response, Trouble> {
    let now = app.source.now().ok_or_else(Trouble::only_kept)??;
    let row = |machine: &shop::Machine| {
        let section = now.described.section(&machine.at)?;
        let last =
            now.state.meters.get(&section).map_or_else(String::new, |last| format!("{} h on {}", hours(last.hours), last.when.day()));
        Some((section.0, machine.name.clone(), last, typed.joined(&section.0.to_string())))
    };
    let machines = now.shop.machines.iter().filter_map(row).collect();
    form_html(!wrong.is_empty(), &Meters { frame: Frame::new(app, visitor, "Today", "Hour meters"), machines, wrong })
}

/// Writes what the hour meters show.
pub(crate) async fn read_meters(State(app): State<Arc<App>>, visitor: Visitor, Form(typed): Form<Typed>) -> Response {
    app.draw(visitor, move |app, visitor| {
        let state = app.source.now().ok_or_else(Trouble::only_kept)??;
        let (mut read, mut wrong) = (Vec::new(), Vec::new());
        for machine in &state.shop.machines {
            let Some(section) = state.described.section(&machine.at) else { continue };
            let text = typed.joined(&section.0.to_string());
            if text.is_empty() {
                continue;
            }
            let number = if text.parse::<f64>().is_ok() { format!("{text} h") } else { text };
            match units::parse::<Time>(&number) {
                Err(error) => {
                    wrong.push((section.0, crate::form::quoted(&crate::form::quoted(&crate::words::sentence(&format!("{error}."))))))
                }
                Ok(shown) => {
                    let before = state.state.meters.get(&section).filter(|last| last.hours > shown);
                    match before.filter(|_| typed.joined(&format!("new-{}", section.0)).is_empty()) {
                        Some(last) => wrong.push((
                            section.0,
                            format!("It showed {} h on {}. Tick below if it is a new meter.", hours(last.hours), last.when.day()),
                        )),
                        None => read.push(What::MeterRead { machine: section, hours: shown }),
                    }
                }
            }
        }
        if !wrong.is_empty() {
            return meters_form(app, visitor, &typed, wrong);
        }
        let (now, said) = (app.now(), by(visitor));
        let written = app.source.with(|kept| kept.write_all(&read, &said, &now)).ok_or_else(Trouble::only_kept)???;
        Ok(to(after(app, &written)))
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
                return super::pot::refused(
                    app,
                    visitor,
                    id,
                    &doing,
                    &typed,
                    &crate::form::quoted(&crate::words::sentence(&format!("{error}."))),
                );
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
        let said = Said { key: Some(typed.joined("mark")).filter(|mark| !mark.is_empty()), ..by(visitor) };
        let now = app.now();
        match app.source.with(|kept| kept.write(what, &said, &now)).ok_or_else(Trouble::only_kept)?? {
            Ok(_) => Ok(to(format!("{}/pot/{pot}", app.settings.base_path.as_str()))),
            Err(KeepError::Store(error @ (StoreError::OtherMeasure { .. } | StoreError::TooMuch(_)))) => {
                super::pot::refused(app, visitor, id, &doing, &typed, &crate::form::quoted(&crate::words::sentence(&format!("{error}."))))
            }
            Err(error) => Err(Trouble::from(error)),
        }
    })
    .await
}

/// Who says so, where they are known.
fn by(visitor: &Visitor) -> Said {
    Said { who: visitor.who.clone(), ..Said::default() }
}

/// Entries named in the address under one word, those that stand.
pub(crate) fn told(app: &App, visitor: &Visitor, word: &str, units: System) -> Vec<Told> {
    let entries: Vec<i64> = visitor.all(word).filter_map(|text| text.parse().ok()).collect();
    let found = app.source.store(|store| {
        let one = |entry: &i64| entry_told(store, &store.entry(EntryId(*entry)).ok()?, units).ok();
        entries.iter().filter_map(one).filter(|told| told.stands).collect()
    });
    found.unwrap_or_default()
}

/// An entry in words.
pub(crate) fn entry_told(store: &Store, logged: &Logged, units: System) -> Result<Told, StoreError> {
    let row = keep::row(store, logged, units)?;
    let amount = row.how_much().map(|amount| format!(", {amount}")).unwrap_or_default();
    let place = row.place.map(|place| format!(": {place}")).unwrap_or_default();
    let undoes = row.undoes.map(|entry| format!(" entry {entry}")).unwrap_or_default();
    let pot = row.pot.map(|pot| format!("from {pot}"));
    let read = row.hours.map(|hours| format!("meter at {hours} h"));
    let undone = row.undone_by.map(|by| format!("taken back by entry {by}"));
    let more = [pot, read, row.who, row.note, undone].into_iter().flatten().collect::<Vec<_>>().join("; ");
    Ok(Told {
        entry: row.id,
        day: logged.entry.when.day(),
        what: format!("{}{undoes}{place}{amount}", crate::words::sentence(row.what)),
        more,
        stands: row.undone_by.is_none() && row.undoes.is_none(),
    })
}
