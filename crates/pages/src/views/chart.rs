//! The lubrication chart of one machine.

use std::sync::Arc;

use askama::Template;
use axum::extract::{Path, State};
use axum::response::Response;
use planner::report::ChartRow;
use planner::verdict::Grade;

use crate::App;
use crate::frame::{Frame, Piece, html};
use crate::trouble::Trouble;
use crate::visitor::Visitor;
use crate::worked::Worked;
use planner::words::{amount, ends, every, gathered};

#[derive(Template)]
#[template(path = "chart.html")]
struct Page<'a> {
    frame: Frame,
    machines: Vec<(&'a str, bool)>,
    /// The machine with its points numbered as in the table.
    drawing: Piece,
    rows: Vec<Row<'a>>,
    minds: Vec<(String, &'a str)>,
    seasons: Vec<(&'a str, String, String)>,
}

struct Row<'a> {
    point: &'a str,
    need: &'a str,
    /// Key and name of the fluid.
    fluid: Option<(&'a str, &'a str)>,
    grade: Option<Grade>,
    reason: &'a str,
    amount: String,
    ends: String,
    how: &'a str,
    every: String,
}

pub(crate) async fn page(State(app): State<Arc<App>>, Path(machine): Path<String>, visitor: Visitor) -> Response {
    app.draw(visitor, move |app, visitor| {
        let shop = app.source.shop()?;
        let frame = Frame::new(app, visitor, "Shop", format!("Lubrication chart: {machine}"));
        let worked = app.plan(&shop, frame.units)?;
        let report = &worked.report;
        if !report.shop.machines.contains(&machine) {
            let names = report.shop.machines.join(", ");
            return Err(Trouble::NotFound(format!("No machine of this shop is called “{machine}”. There are: {names}.")));
        }
        let rows: Vec<&ChartRow> = report.chart.iter().filter(|row| row.machine == machine).collect();
        let here = |need: &str| rows.iter().any(|row| worked.need_of(row) == need);
        let season = report.seasons.iter().filter(|season| here(&season.need));
        let template = shop.machines.iter().find(|one| one.name == machine).and_then(|machine| machine.template.as_deref());
        let names: Vec<&str> = rows.iter().map(|row| row.point.as_str()).collect();
        html(&Page {
            drawing: Piece(drawing::draw(template, &names).svg),
            machines: report.shop.machines.iter().map(|name| (name.as_str(), *name == machine)).collect(),
            minds: gathered(rows.iter().map(|row| (row.point.as_str(), row.mind.as_slice()))),
            seasons: season.map(|row| (row.place.as_str(), app.reference.name_of(&row.cold), app.reference.name_of(&row.warm))).collect(),
            rows: rows.iter().map(|row| chart_row(&worked, row)).collect(),
            frame,
        })
    })
    .await
}

fn chart_row<'a>(worked: &'a Worked, row: &'a ChartRow) -> Row<'a> {
    Row {
        point: &row.point,
        need: worked.need_of(row),
        fluid: row.fluid.as_deref().zip(row.name.as_deref()),
        grade: row.grade,
        reason: &row.reason,
        amount: row.dose.map_or_else(String::new, |dose| amount(dose, worked.units)),
        ends: row.dose.filter(|dose| dose.low < dose.high).map_or_else(String::new, |dose| ends(dose, worked.units)),
        how: &row.how,
        every: row.every.as_ref().map_or_else(String::new, every),
    }
}
