//! The round of a month as a tick sheet: a row for each point, a column for each day, a box where it comes due.

use askama::Template;
use jiff::ToSpan;
use jiff::civil::{Date, Weekday};
use planner::report::ChartRow;
use planner::words::{amount, every, is_daily};

use super::{Head, Paper, Sheet, unbroken};

#[derive(Template)]
#[template(path = "paper/round.html")]
struct Page<'a> {
    head: Head,
    /// Whether a log says what was done.
    logged: bool,
    /// Why nobody can say what is due.
    unknown: Option<&'a str>,
    last: String,
    /// Each month and how many of its days are on the sheet.
    months: Vec<(String, usize)>,
    days: Vec<Day>,
    machines: Vec<Machine<'a>>,
    /// Points that do not come due in the month.
    later: usize,
}

struct Day {
    number: i8,
    letter: String,
    /// How its column looks: a rule before each week, and what falls on a weekend told apart.
    class: &'static str,
}

struct Machine<'a> {
    name: &'a str,
    rows: Vec<Row<'a>>,
}

struct Row<'a> {
    number: usize,
    point: &'a str,
    fluid: String,
    amount: String,
    every: String,
    /// The day it fell due before today.
    since: Option<String>,
    boxes: Vec<bool>,
}

impl Paper<'_> {
    /// What comes due from today until the day before this one a month on.
    pub(super) fn round(&self) -> Result<String, askama::Error> {
        let end = self.today.saturating_add(1.month());
        let dates: Vec<Date> = self.today.series(1.day()).take_while(|day| *day < end).collect();
        let mut months: Vec<(String, usize)> = Vec::new();
        for date in &dates {
            let month = date.strftime("%B %Y").to_string();
            match months.last_mut().filter(|(last, _)| *last == month) {
                Some((_, days)) => *days += 1,
                None => months.push((month, 1)),
            }
        }
        let machines: Vec<Machine<'_>> = self.worked.report.shop.machines.iter().map(|name| self.round_of(name, &dates)).collect();
        let wanted = |row: &&ChartRow| row.fluid.is_some() && row.every.is_some();
        let shown: usize = machines.iter().map(|machine| machine.rows.len()).sum();
        Page {
            head: self.head_of(Sheet::Round),
            logged: matches!(self.worked.day, Some(Ok(_))),
            unknown: self.worked.day.as_ref().and_then(|day| day.as_ref().err()).map(String::as_str),
            last: dates.last().map_or_else(String::new, |day| day.strftime("%-d %B %Y").to_string()),
            months,
            days: dates.iter().map(|date| day(*date)).collect(),
            later: self.worked.report.chart.iter().filter(wanted).count() - shown,
            machines: machines.into_iter().filter(|machine| !machine.rows.is_empty()).collect(),
        }
        .render()
    }

    fn round_of<'a>(&'a self, name: &'a str, dates: &[Date]) -> Machine<'a> {
        let rows = self.worked.report.chart.iter().filter(|row| row.machine == name);
        Machine { name, rows: (1..).zip(rows).filter_map(|(number, row)| self.round_row(number, row, dates)).collect() }
    }

    /// The row of a point; none where it is not due in the month.
    fn round_row<'a>(&self, number: usize, row: &'a ChartRow, dates: &[Date]) -> Option<Row<'a>> {
        let (fluid, often) = (row.name.as_deref()?, row.every.as_ref()?);
        let day = self.worked.day.as_ref().and_then(|day| day.as_ref().ok());
        // Without a log nothing is known to be done, and all of it begins today.
        let (due, apart) = match day {
            Some(day) => {
                let point = day.round.points.iter().find(|one| one.machine == row.machine && one.point == row.point)?;
                (point.due_on?, point.days_apart.map(f64::from))
            }
            None => (self.today, often.days.map(|days| days.round().max(1.0))),
        };
        let boxes: Vec<bool> = if is_daily(often) && (often.with.is_some() || often.days.is_none()) {
            dates.iter().map(|_| true).collect()
        } else {
            let first = due.max(self.today);
            dates.iter().map(|date| comes_round((*date - first).get_days(), apart)).collect()
        };
        boxes.contains(&true).then(|| Row {
            number,
            point: &row.point,
            fluid: unbroken(fluid),
            amount: row.dose.map_or_else(String::new, |dose| amount(dose, self.worked.units)),
            every: unbroken(&every(often)),
            since: Some(due).filter(|due| *due < self.today).map(|due| due.to_string()),
            boxes,
        })
    }
}

/// Whether something comes round on a day so many days after it was first due, every so many days.
fn comes_round(after: i32, every: Option<f64>) -> bool {
    after == 0 || after > 0 && every.is_some_and(|step| f64::from(after) % step == 0.0)
}

fn day(date: Date) -> Day {
    Day {
        number: date.day(),
        letter: date.strftime("%a").to_string().chars().take(1).collect(),
        class: match date.weekday() {
            Weekday::Monday => "day week",
            Weekday::Saturday | Weekday::Sunday => "day weekend",
            _ => "day",
        },
    }
}

#[cfg(test)]
mod tests {
    use super::comes_round;

    #[test]
    fn what_comes_round_weekly_has_a_box_a_week() {
        let boxes: Vec<i32> = (-3..31).filter(|after| comes_round(*after, Some(7.0))).collect();
        assert_eq!(boxes, [0, 7, 14, 21, 28]);
        assert_eq!((0..31).filter(|after| comes_round(*after, None)).count(), 1);
    }
}
