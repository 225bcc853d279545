//! The shop as it was read: room, machines, work, and what was supposed.

use std::sync::Arc;

use askama::Template;
use axum::extract::State;
use axum::response::Response;
use fields::{Answer, Answers, Asks, Kind, Origin};
use shop::{Job, Machine, Point, Room, Shop, Span};
use units::{Digits, System, show, show_base, show_number};

use crate::App;
use crate::frame::{Frame, html};
use crate::visitor::Visitor;
use crate::words::{sentence, several};

#[derive(Template)]
#[template(path = "shop.html")]
struct Page<'a> {
    frame: Frame,
    currency: &'a str,
    avoid: Vec<String>,
    room: Vec<(&'static str, String)>,
    machines: Vec<MachineRow<'a>>,
    work: Vec<JobRow<'a>>,
    work_count: String,
    supposed: Vec<(&'a str, Vec<&'a shop::Assumption>)>,
    supposed_count: usize,
    /// The shop is kept, and can be changed here.
    kept: bool,
    /// Work is only supposed.
    work_supposed: bool,
}

struct MachineRow<'a> {
    machine: &'a Machine,
    /// Its form, where it can be changed here.
    form: Option<String>,
    hours: String,
    count: String,
    points: Vec<PointRow<'a>>,
}

struct PointRow<'a> {
    point: &'a Point,
    about: String,
    said: Vec<Said>,
}

struct JobRow<'a> {
    name: &'a str,
    form: Option<String>,
    about: String,
    often: String,
    said: Vec<Said>,
}

/// One answer: the key, the value, the source of a supposed one.
struct Said {
    key: &'static str,
    value: String,
    source: Option<String>,
}

pub(crate) async fn page(State(app): State<Arc<App>>, visitor: Visitor) -> Response {
    app.draw(visitor, |app, visitor| {
        let shop = app.source.shop()?;
        let frame = Frame::new(app, visitor, "Shop", "Shop");
        let units = frame.units;
        let now = app.source.now().transpose()?.filter(|_| !frame.read_only);
        let form = |at: &Span| {
            let id = now.as_ref()?.described.section(at).filter(|_| at.end > 0)?;
            Some(format!("{}/part/{}", frame.base, id.0))
        };
        html(&Page {
            kept: now.is_some(),
            work_supposed: shop.work.iter().any(|job| job.at.end == 0),
            currency: &shop.currency,
            avoid: shop.avoid.iter().map(|key| app.reference.name_of(key)).collect(),
            room: room(&shop.room, units),
            machines: shop.machines.iter().map(|machine| machine_row(machine, form(&machine.at), units)).collect(),
            work_count: several(shop.work.len(), "kind of work", "kinds of work"),
            work: shop.work.iter().map(|job| job_row(job, form(&job.at), units)).collect(),
            supposed: by_place(&shop),
            supposed_count: shop.assumptions.len(),
            frame,
        })
    })
    .await
}

fn room(room: &Room, units: System) -> Vec<(&'static str, String)> {
    let yes = |flag: bool| if flag { "yes" } else { "no" }.to_owned();
    vec![
        ("Air space", show(room.volume, units)),
        ("Air changes, door shut", show(room.air_changes, units)),
        ("Heating", room.heating.word().to_owned()),
        ("Coldest start", show(room.coldest, units)),
        ("Usual working day", show(room.usual, units)),
        ("Hottest run", show(room.hottest, units)),
        ("Damp season", show(room.humidity, units)),
        ("Joined to the house", yes(room.attached_to_house)),
        ("Strong smells unwelcome", yes(room.low_odour)),
    ]
}

fn machine_row(machine: &Machine, form: Option<String>, units: System) -> MachineRow<'_> {
    MachineRow {
        machine,
        form,
        hours: show(machine.hours, units),
        count: several(machine.points.len(), "point", "points"),
        points: machine.points.iter().map(|point| point_row(point, units)).collect(),
    }
}

fn point_row(point: &Point, units: System) -> PointRow<'_> {
    PointRow { point, about: sentence(point.kind.about), said: said(point.kind, &point.answers, units) }
}

fn job_row(job: &Job, form: Option<String>, units: System) -> JobRow<'_> {
    JobRow {
        name: &job.name,
        form,
        about: sentence(job.kind.about),
        often: show(job.often, units),
        said: said(job.kind, &job.answers, units),
    }
}

fn said(kind: &Kind, answers: &Answers, units: System) -> Vec<Said> {
    let row = |(key, answer, origin): (&'static str, &Answer, &Origin)| {
        let asks = kind.fields.iter().find(|field| field.name == key).map(|field| field.asks);
        let value = match (answer, asks) {
            (Answer::Quantity(base), Some(Asks::Quantity(dimension))) => show_base(dimension, *base, units),
            (Answer::Quantity(number) | Answer::Number(number), _) => show_number(*number, Digits::Significant(4)),
            (Answer::Flag(flag), _) => if *flag { "yes" } else { "no" }.to_owned(),
            (Answer::Words(words), _) => words.join(", "),
        };
        let source = match origin {
            Origin::User(_) => None,
            Origin::Supposed(key) => Some(key.clone()),
        };
        Said { key, value, source }
    };
    answers.iter().map(row).collect()
}

/// What was supposed, a list for each place.
fn by_place(shop: &Shop) -> Vec<(&str, Vec<&shop::Assumption>)> {
    let mut places: Vec<(&str, Vec<&shop::Assumption>)> = Vec::new();
    for assumption in &shop.assumptions {
        match places.last_mut().filter(|(place, _)| *place == assumption.place) {
            Some((_, list)) => list.push(assumption),
            None => places.push((&assumption.place, vec![assumption])),
        }
    }
    places
}
