//! Today: what to do next.

use std::sync::Arc;

use askama::Template;
use axum::extract::State;
use axum::response::Response;
use planner::report::{ChartRow, RungRow};

use crate::App;
use crate::frame::{Frame, html};
use crate::visitor::Visitor;
use crate::words::{amount, every, is_daily, several};
use crate::worked::Worked;

#[derive(Template)]
#[template(path = "today.html")]
struct Page<'a> {
    frame: Frame,
    first: Option<&'a RungRow>,
    missing: Option<&'a RungRow>,
    unserved: String,
    cautions: String,
    supposed: String,
    machines: Vec<Machine<'a>>,
    jobs: usize,
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
        html(&Page {
            first: report.ladder.first(),
            missing: report.ladder.get(1),
            unserved: several(report.unserved.len(), "place is", "places are"),
            cautions: several(report.cautions.len(), "thing", "things"),
            supposed: several(report.assumptions.len(), "value", "values"),
            machines: report.shop.machines.iter().map(|name| machine(&worked, name)).collect(),
            jobs: report.work.len(),
            frame,
        })
    })
    .await
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
