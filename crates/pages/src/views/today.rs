//! Today: what is due, what runs low, what to do next.

use std::sync::Arc;

use askama::Template;
use axum::extract::State;
use axum::response::Response;
use jiff::civil::Date;
use planner::report::{ChartRow, RungRow};
use planner::round::{End, PotRow, RoundRow, Standing};
use store::{EntryId, SectionId, Written};
use units::System;

use super::cupboard::pack;
use super::log::{self, Told};
use crate::App;
use crate::frame::{Frame, html};
use crate::visitor::Visitor;
use crate::words::several;
use crate::worked::{Day, Worked};
use planner::words::{amount, every, is_daily};

/// What stands in the cupboard and runs out within so many days is said today.
const SOON_DAYS: i32 = 28;

#[derive(Template)]
#[template(path = "today.html")]
struct Page<'a> {
    frame: Frame,
    /// The day, where a log is kept.
    today: Option<String>,
    /// Who ticks on this device.
    who: Option<&'a str>,
    /// What was just written.
    told: Vec<Told>,
    /// What was to be written, and somebody else had written.
    already: Vec<Told>,
    /// Why the daily backup failed.
    backup: Option<String>,
    /// Why nobody can say what is due.
    unknown: Option<&'a str>,
    due: Vec<DueAt<'a>>,
    soon: Vec<Due<'a>>,
    later: Option<String>,
    pots: Vec<(String, String)>,
    buy: Vec<(String, String)>,
    first: Option<&'a RungRow>,
    missing: Option<&'a RungRow>,
    unserved: String,
    cautions: String,
    supposed: String,
    machines: Vec<Machine<'a>>,
    jobs: usize,
}

/// What is due at one machine, one can after the other.
struct DueAt<'a> {
    machine: &'a str,
    cans: Vec<Can<'a>>,
}

/// What is due with one fluid.
struct Can<'a> {
    key: &'a str,
    fluid: &'a str,
    in_cupboard: bool,
    rows: Vec<Due<'a>>,
}

impl DueAt<'_> {
    fn count(&self) -> usize {
        self.cans.iter().map(|can| can.rows.len()).sum()
    }
}

struct Due<'a> {
    machine: &'a str,
    point: &'a str,
    need: &'a str,
    key: &'a str,
    fluid: &'a str,
    amount: String,
    how: &'a str,
    when: String,
    /// The day it is due, or was.
    due: String,
    overdue: bool,
    in_cupboard: bool,
}

struct Machine<'a> {
    name: &'a str,
    points: String,
    daily: Vec<Daily<'a>>,
}

struct Daily<'a> {
    point: &'a str,
    need: &'a str,
    fluid: &'a str,
    amount: String,
    every: String,
}

pub(crate) async fn page(State(app): State<Arc<App>>, visitor: Visitor) -> Response {
    app.draw(visitor, |app, visitor| {
        let shop = app.source.shop()?;
        let frame = Frame::new(app, visitor, "Today", "Today");
        let worked = app.plan(&shop, frame.units)?;
        let report = &worked.report;
        let (day, unknown) = match &worked.day {
            Some(Ok(day)) => (Some(day), None),
            Some(Err(said)) => (None, Some(said.as_str())),
            None => (None, None),
        };
        let standing = |standing: fn(Standing) -> bool| {
            let rows = day.iter().flat_map(|day| &day.round.points).filter(move |row| standing(row.standing));
            rows.map(|row| due(&worked, row))
        };
        let mut machines: Vec<DueAt<'_>> = Vec::new();
        for row in standing(|standing| standing <= Standing::Due) {
            let place = machines.iter().position(|at| at.machine == row.machine).unwrap_or(machines.len());
            if place == machines.len() {
                machines.push(DueAt { machine: row.machine, cans: Vec::new() });
            }
            let cans = &mut machines[place].cans;
            match cans.iter_mut().find(|can| can.fluid == row.fluid) {
                Some(can) => can.rows.push(row),
                None => cans.push(Can { key: row.key, fluid: row.fluid, in_cupboard: row.in_cupboard, rows: vec![row] }),
            }
        }
        html(&Page {
            today: day.map(|day| day.round.today.strftime("%A, %-d %B %Y").to_string()),
            who: visitor.who.as_deref().filter(|_| !frame.read_only),
            told: told(app, visitor, "entry", frame.units),
            already: told(app, visitor, "already", frame.units),
            backup: app.source.backup_trouble(),
            unknown,
            due: machines,
            soon: standing(|standing| standing == Standing::Soon).collect(),
            later: day.and_then(later),
            pots: day.map_or_else(Vec::new, |day| pots(app, day)),
            buy: day.map_or_else(Vec::new, |day| day.cupboard.buy.iter().map(|row| (row.name.clone(), pack(row))).collect()),
            first: report.ladder.first(),
            missing: report.ladder.get(1),
            unserved: several(report.unserved.len(), "place is", "places are"),
            cautions: several(report.cautions.len(), "thing", "things"),
            supposed: several(report.assumptions.len(), "value", "values"),
            machines: if worked.day.is_some() {
                Vec::new()
            } else {
                report.shop.machines.iter().map(|name| machine(&worked, name)).collect()
            },
            jobs: report.work.len(),
            frame,
        })
    })
    .await
}

/// Today, with what was written at the top, and what somebody had written before.
pub(crate) fn after(app: &App, written: &[Written]) -> String {
    let said = |one: &Written| match one {
        Written::New(logged) => format!("entry={}", logged.id.0),
        Written::Already(logged) => format!("already={}", logged.id.0),
    };
    let said: Vec<String> = written.iter().map(said).collect();
    format!("{}/?{}", app.settings.base_path.as_str(), said.join("&")).trim_end_matches('?').to_owned()
}

/// Entries named in the address under one word, those that stand.
fn told(app: &App, visitor: &Visitor, word: &str, units: System) -> Vec<Told> {
    let entries: Vec<i64> = visitor.all(word).filter_map(|text| text.parse().ok()).collect();
    let found = app.source.store(|store| {
        let one = |entry: &i64| log::told(store, &store.entry(EntryId(*entry)).ok()?, units).ok();
        entries.iter().filter_map(one).filter(|told| told.stands).collect()
    });
    found.unwrap_or_default()
}

fn due<'a>(worked: &'a Worked, row: &'a RoundRow) -> Due<'a> {
    let charted = worked.report.chart.iter().find(|one| one.machine == row.machine && one.point == row.point);
    let since = row.last_done.map_or_else(|| "not written down yet".to_owned(), |day| format!("last done {day}"));
    let over = match (row.overdue_days, row.overdue_hours) {
        (Some(days), _) if days > 0 => format!("{} over; ", several(usize::try_from(days).unwrap_or(0), "day", "days")),
        (_, Some(hours)) => format!("{hours} running hours over; "),
        _ => String::new(),
    };
    let when = match (row.standing, row.due_on) {
        (Standing::Soon | Standing::Later, Some(day)) => format!("due {day}; {since}"),
        _ => format!("{over}{since}"),
    };
    Due {
        machine: &row.machine,
        point: &row.point,
        need: charted.map_or("", |row| worked.need_of(row)),
        key: &row.fluid,
        fluid: &row.name,
        amount: amount(row.dose, worked.units),
        how: &row.how,
        when,
        due: row.due_on.map_or_else(String::new, |day| day.to_string()),
        overdue: row.standing == Standing::Overdue && row.last_done.is_some(),
        in_cupboard: row.in_cupboard,
    }
}

/// What comes after the week, in a sentence.
fn later(day: &Day) -> Option<String> {
    let mut later = day.round.points.iter().filter(|row| row.standing == Standing::Later).peekable();
    let first = later.peek()?.due_on.map_or_else(String::new, |day| format!(", the first on {day}"));
    Some(format!("{} later{first}.", several(later.count(), "point is due", "points are due")))
}

/// Pots that are empty or too old, or soon will be: each with its address.
fn pots(app: &App, day: &Day) -> Vec<(String, String)> {
    let Some(Ok(now)) = app.source.now() else { return Vec::new() };
    let soon = |date: Option<Date>| date.is_some_and(|date| (date - day.round.today).get_days() <= SOON_DAYS);
    let said = |row: &PotRow| match row.end {
        End::Empty => Some("empty".to_owned()),
        End::Expired => row.expires_on.map(|date| format!("too old since {date}")),
        End::UsedUp => row.empty_on.filter(|date| soon(Some(*date))).map(|date| format!("used up about {date}")),
        End::Expires => row.expires_on.filter(|date| soon(Some(*date))).map(|date| format!("good until {date}")),
        End::Unknown => None,
    };
    let address = |row: &PotRow| {
        let pot = row.pot.checked_sub(1).and_then(|place| now.shop.pots.get(place))?;
        now.described.section(&pot.at).map(|SectionId(id)| format!("{}/pot/{id}", app.settings.base_path.as_str()))
    };
    day.cupboard.pots.iter().filter_map(|row| Some((format!("{}: {}", row.name, said(row)?), address(row)?))).collect()
}

fn machine<'a>(worked: &'a Worked, name: &'a str) -> Machine<'a> {
    let rows: Vec<&ChartRow> = worked.report.chart.iter().filter(|row| row.machine == name).collect();
    let daily = rows.iter().filter_map(|row| {
        let often = row.every.as_ref().filter(|every| is_daily(every))?;
        Some(Daily {
            point: &row.point,
            need: worked.need_of(row),
            fluid: row.name.as_deref()?,
            amount: row.dose.map_or_else(String::new, |dose| amount(dose, worked.units)),
            every: every(often),
        })
    });
    Machine { name, points: several(rows.len(), "point", "points"), daily: daily.collect() }
}
