//! The shop as it was read: room, machines, work, and what was supposed.

use std::sync::Arc;

use askama::Template;
use axum::extract::State;
use axum::response::Response;
use fields::{Answer, Answers, Asks, Kind, Origin};
use shop::{Machine, Point, Room, Shop};
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
    supposed: Vec<(&'a str, Vec<&'a shop::Assumption>)>,
    supposed_count: usize,
}

struct MachineRow<'a> {
    machine: &'a Machine,
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
        html(&Page {
            currency: &shop.currency,
            avoid: shop.avoid.iter().map(|key| app.reference.name_of(key)).collect(),
            room: room(&shop.room, units),
            machines: shop.machines.iter().map(|machine| machine_row(machine, units)).collect(),
            work: work(&shop, units),
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

fn machine_row(machine: &Machine, units: System) -> MachineRow<'_> {
    MachineRow {
        machine,
        hours: show(machine.hours, units),
        count: several(machine.points.len(), "point", "points"),
        points: machine.points.iter().map(|point| point_row(point, units)).collect(),
    }
}

fn point_row(point: &Point, units: System) -> PointRow<'_> {
    PointRow { point, about: sentence(point.kind.about), said: said(point.kind, &point.answers, units) }
}

fn work(shop: &Shop, units: System) -> Vec<JobRow<'_>> {
    let row = shop.work.iter().map(|job| JobRow {
        name: &job.name,
        about: sentence(job.kind.about),
        often: show(job.often, units),
        said: said(job.kind, &job.answers, units),
    });
    row.collect()
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
