//! The lubrication charts, a machine to a sheet.

use askama::Template;
use planner::report::ChartRow;
use planner::verdict::Grade;
use planner::words::{amount, every, gathered};

use super::{Head, Paper, Sheet, unbroken};
use crate::frame::Piece;

#[derive(Template)]
#[template(path = "paper/chart.html")]
struct Page<'a> {
    head: Head,
    machines: Vec<Machine<'a>>,
}

struct Machine<'a> {
    name: &'a str,
    /// The machine with its points numbered as in the table.
    drawing: Piece,
    rows: Vec<Row<'a>>,
    minds: Vec<(String, &'a str)>,
    seasons: Vec<(&'a str, String, String)>,
}

struct Row<'a> {
    number: usize,
    point: &'a str,
    fluid: Option<String>,
    /// Said where it only will do.
    will_do: bool,
    reason: &'a str,
    amount: String,
    how: &'a str,
    every: String,
}

impl Paper<'_> {
    /// The chart of each machine, or that of one.
    pub(super) fn chart(&self, only: Option<&str>) -> Result<String, askama::Error> {
        let machines = self.worked.report.shop.machines.iter().map(String::as_str);
        let machines = machines.filter(|name| only.is_none_or(|only| only == *name)).map(|name| self.machine(name)).collect();
        let head = only.map_or_else(|| self.head_of(Sheet::Chart), |only| self.head(&format!("Lubrication chart: {only}"), "chart"));
        Page { head, machines }.render()
    }

    fn machine<'a>(&'a self, name: &'a str) -> Machine<'a> {
        let report = &self.worked.report;
        let rows: Vec<&ChartRow> = report.chart.iter().filter(|row| row.machine == name).collect();
        let here = |need: &str| rows.iter().any(|row| self.worked.need_of(row) == need);
        let seasons = report.seasons.iter().filter(|season| here(&season.need));
        let found = self.worked.shop.machines.iter().find(|one| one.name == name);
        let points: Vec<&str> = rows.iter().map(|row| row.point.as_str()).collect();
        Machine {
            name,
            drawing: Piece(drawing::draw(found.and_then(|machine| machine.template.as_deref()), &points).svg),
            minds: gathered(rows.iter().map(|row| (row.point.as_str(), row.mind.as_slice()))),
            seasons: seasons
                .map(|row| (row.place.as_str(), self.reference.name_of(&row.cold), self.reference.name_of(&row.warm)))
                .collect(),
            rows: (1..).zip(rows).map(|(number, row)| self.chart_row(number, row)).collect(),
        }
    }

    fn chart_row<'a>(&self, number: usize, row: &'a ChartRow) -> Row<'a> {
        Row {
            number,
            point: &row.point,
            fluid: row.name.as_deref().map(unbroken),
            will_do: row.grade == Some(Grade::WillDo),
            reason: &row.reason,
            amount: row.dose.map_or_else(String::new, |dose| amount(dose, self.worked.units)),
            how: &row.how,
            every: row.every.as_ref().map_or_else(String::new, |often| unbroken(&every(often))),
        }
    }
}
