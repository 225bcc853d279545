//! `plan`: what to buy in which order, what goes where.

use std::process::ExitCode;

use fields::did_you_mean;
use planner::need::Dose;
use planner::report::{ChartRow, Report, RungRow, StepRow};
use planner::words::{Places, amount, every, gathered, lasts, places};
use planner::{Plan, PlanError, Wishes, plan};
use reference::Reference;
use units::System;

use crate::args;
use crate::check::assumptions;
use crate::input::{Failure, read};
use crate::shell::print_json;
use crate::style::{bar, bold, dim, grade, heading, lines as lines_of, paragraph, table, width};

/// Runs the command.
pub fn run(wanted: &args::Plan) -> Result<ExitCode, Failure> {
    let (file, shop) = read(&wanted.common)?;
    let reference = Reference::embedded();
    let wishes = Wishes { rungs: Some(usize::from(wanted.rungs)), without: meant(&wanted.without, reference)?, budget: wanted.budget };
    let plan = match plan(&shop, reference, &wishes) {
        Ok(plan) => plan,
        Err(PlanError::Shop(found)) => return Err(Failure::File(file, found)),
        Err(error) => return Err(Failure::Said(error.to_string())),
    };
    let report = plan.report(shop.units);
    if wanted.common.json {
        return print_json(&report);
    }
    anstream::println!("{}", Page { plan: &plan, report: &report, units: shop.units }.text());
    Ok(ExitCode::SUCCESS)
}

/// The fluids and classes meant by these words.
fn meant(words: &[String], reference: &Reference) -> Result<Vec<String>, Failure> {
    let known = || reference.fluids.keys().chain(reference.classes.keys()).map(String::as_str);
    let one = |word: &String| {
        let unknown = || Failure::Said(format!("`{word}` is neither a fluid nor a class of fluids. {}", did_you_mean(word, known())));
        reference.meant(word, known()).map(ToOwned::to_owned).ok_or_else(unknown)
    };
    words.iter().map(one).collect()
}

/// The plan on its way to the terminal.
struct Page<'a> {
    plan: &'a Plan<'a>,
    report: &'a Report,
    units: System,
}

impl Page<'_> {
    fn text(&self) -> String {
        let mut parts = vec![self.title(), self.ladder()];
        parts.extend(self.budget());
        parts.extend(self.charts());
        parts.extend(self.work());
        parts.extend(self.uses());
        parts.extend(self.seasons());
        parts.extend(self.unserved());
        parts.push(self.cautions());
        parts.push(self.supposed());
        parts.join("\n\n")
    }

    fn title(&self) -> String {
        let room = &self.plan.shop.room;
        let air = [room.coldest, room.hottest].map(|at| units::show(at, self.units));
        let line = format!(
            "{}, {}, {}. Air {} to {}. Prices in {}, indicative.",
            several(self.report.shop.machines.len(), "machine"),
            several(self.report.shop.work.len(), "kind of work"),
            several(self.report.needs.len(), "need"),
            air[0],
            air[1],
            self.report.shop.currency
        );
        format!("{}\n{}", bold(&self.report.shop.name), paragraph(&line, "", ""))
    }

    fn ladder(&self) -> String {
        let mut lines = vec![heading("What to buy, in this order")];
        if self.report.ladder.is_empty() {
            lines.push("  Nothing: what stands in the cupboard serves all it can.".to_owned());
        }
        lines.extend(self.report.ladder.iter().map(|rung| self.rung(rung)));
        let legend = "The bar is the share of all that could be served; the order goes by that, and by price only among equals. A rung \
                      keeps its place in the stated share of 500 draws of weights, prices and grades.";
        lines.push(dim(&paragraph(legend, "  ", "  ")));
        lines.join("\n")
    }

    fn rung(&self, rung: &RungRow) -> String {
        const BAR: usize = 16;
        let share = self.plan.served(rung.total);
        let pack = rung.pack.as_ref().map_or_else(String::new, |pack| format!("{}, {:.2} {}", pack.size, pack.price, pack.currency));
        let left = format!("{:>3}  {}", rung.rung, rung.name);
        let right = format!("{pack:>20}  {} {:>3.0} %", bar(share, BAR), share * 100.0);
        let gap = width().saturating_sub(left.chars().count() + right.chars().count());
        let mut lines = if gap >= 2 {
            vec![format!("{:>3}  {}{}{right}", rung.rung, bold(&rung.name), " ".repeat(gap))]
        } else {
            let gap = width().saturating_sub(right.chars().count());
            vec![format!("{:>3}  {}", rung.rung, bold(&rung.name)), format!("{}{right}", " ".repeat(gap))]
        };
        for (verb, needs) in [("opens", &rung.needs), ("makes right", &rung.betters)] {
            if !needs.is_empty() {
                lines.push(paragraph(&format!("{verb} {}", self.places(needs)), "       ", "         "));
            }
        }
        let mut notes = vec![format!("keeps its place in {:.0} % of draws", rung.holds_in * 100.0)];
        if rung.opens_with_next {
            notes.push("pays together with the next one".to_owned());
        }
        let best = self.plan.served(rung.best_possible);
        if best > share + 0.005 {
            notes.push(format!("the best {} fluids together would serve {:.0} %", rung.rung, best * 100.0));
        }
        if rung.gap > 0.0 {
            notes.push(format!("proven to within {:.1} %", 100.0 * rung.gap));
        }
        lines.push(dim(&paragraph(&notes.join("; "), "       ", "       ")));
        lines.join("\n")
    }

    /// Needs by name, a machine or job at a time.
    fn places(&self, needs: &[String]) -> String {
        let named = |(whole, parts): &Places<'_>| format!("{whole}: {}", few(&parts.iter().map(|(part, _)| *part).collect::<Vec<_>>()));
        places(&self.report.needs, needs).iter().map(named).collect::<Vec<_>>().join("; ")
    }

    fn budget(&self) -> Option<String> {
        let best = self.report.budget.as_ref()?;
        let currency = &self.report.shop.currency;
        let share = self.plan.served(best.total) * 100.0;
        let named = |(key, pack): (&String, &String)| format!("{} {pack}", self.plan.reference.name_of(key));
        let names: Vec<String> = best.fluids.iter().zip(&best.packs).map(named).collect();
        let proof = if best.gap > 0.0 { format!(" Proven to within {:.1} %.", best.gap * 100.0) } else { String::new() };
        let text = if names.is_empty() {
            format!("For {:.2} {currency} nothing on the list can be bought that serves more.", best.budget)
        } else {
            format!(
                "For {:.2} {currency} the best set is: {}. It costs {:.2} and serves {share:.0} %.{proof} What follows counts on it.",
                best.budget,
                names.join("; "),
                best.cost
            )
        };
        Some(format!("{}\n{}", heading("The best for the money"), paragraph(&text, "  ", "  ")))
    }

    fn charts(&self) -> Vec<String> {
        self.report.shop.machines.iter().map(|machine| self.chart(machine)).collect()
    }

    fn chart(&self, machine: &str) -> String {
        const WIDE: usize = 110;
        let wide = width() >= WIDE;
        let header: &[&str] = if wide {
            &["point", "fluid", "how much", "how", "how often", "serves"]
        } else {
            &["point", "fluid", "how much", "how often", "serves"]
        };
        let mut table = table(header);
        for row in self.report.chart.iter().filter(|row| row.machine == machine) {
            let mut cells = vec![row.point.clone()];
            cells.push(row.name.clone().unwrap_or_else(|| {
                if row.grade.is_none() && row.dose.is_none() { format!("none: {}", row.reason) } else { String::new() }
            }));
            cells.push(row.dose.map_or_else(String::new, |dose| amount(dose, self.units)));
            if wide {
                cells.push(row.how.clone());
            }
            cells.push(row.every.as_ref().map_or_else(String::new, every));
            cells.push(row.grade.map_or_else(String::new, grade));
            table.add_row(cells);
        }
        let mut lines = vec![heading(&format!("Lubrication chart: {machine}")), lines_of(&mut table)];
        if !wide {
            lines.extend(ways(self.report.chart.iter().filter(|row| row.machine == machine && row.fluid.is_some())));
        }
        lines.extend(minds(
            self.report.chart.iter().filter(|row| row.machine == machine).map(|row: &ChartRow| (row.point.as_str(), row.mind.as_slice())),
        ));
        lines.join("\n")
    }

    fn work(&self) -> Option<String> {
        if self.report.work.is_empty() {
            return None;
        }
        let mut lines = vec![heading("What the work takes")];
        for job in &self.report.work {
            lines.push(format!("  {}", bold(&job.job)));
            let mut table = table(&[]);
            for step in &job.steps {
                let fluid = step.name.clone().unwrap_or_else(|| format!("none: {}", step.reason));
                let amount = step.dose.map_or_else(String::new, |dose| amount(dose, self.units));
                table.add_row([format!("  {}", step.step), fluid, amount, step.grade.map_or_else(String::new, grade)]);
            }
            lines.push(lines_of(&mut table));
            lines.extend(minds(job.steps.iter().map(|step: &StepRow| (step.step.as_str(), step.mind.as_slice()))));
        }
        Some(lines.join("\n"))
    }

    fn uses(&self) -> Option<String> {
        if self.report.use_a_year.is_empty() {
            return None;
        }
        let mut table = table(&["fluid", "a year takes", "pack", "lasts"]);
        for row in &self.report.use_a_year {
            table.add_row([row.name.clone(), range(row.amount, self.units), row.pack.clone().unwrap_or_default(), lasts(row)]);
        }
        Some(format!("{}\n{}", heading("A year's use"), lines_of(&mut table)))
    }

    fn seasons(&self) -> Option<String> {
        if self.report.seasons.is_empty() {
            return None;
        }
        let mut lines = vec![
            heading("With the season"),
            paragraph("No one fluid is right there from the coldest start to the hottest day:", "  ", "  "),
        ];
        for row in &self.report.seasons {
            let [cold, warm] = [&row.cold, &row.warm].map(|key| self.plan.reference.name_of(key));
            lines.push(paragraph(&format!("{}: {cold} in the cold months, {warm} in the warm", row.place), "  ", "    "));
        }
        Some(lines.join("\n"))
    }

    fn unserved(&self) -> Option<String> {
        if self.report.unserved.is_empty() {
            return None;
        }
        let mut lines = vec![heading(&format!("Not served by this ladder ({})", self.report.unserved.len()))];
        for row in &self.report.unserved {
            lines.push(paragraph(&format!("{}: {}", row.place, row.why), "  ", "    "));
        }
        Some(lines.join("\n"))
    }

    /// What was supposed of the shop, its room, machines and work; the sizes of points are many and stand in `check`.
    fn supposed(&self) -> String {
        let all = &self.plan.shop.assumptions;
        let (points, others): (Vec<_>, Vec<_>) = all.iter().cloned().partition(|assumption| assumption.place.contains(" · "));
        let title = heading(&format!("Supposed, because the file does not say ({})", all.len()));
        let rest = format!("And {} of points: `gallipot check` lists them.", several(points.len(), "size"));
        format!("{title}\n{}\n{}", assumptions(&others), dim(&paragraph(&rest, "  ", "  ")))
    }

    fn cautions(&self) -> String {
        let mut lines = vec![heading("Mind")];
        for caution in &self.report.cautions {
            lines.push(paragraph(&format!("{}. {}", caution.about, caution.text), "  ", "    "));
        }
        lines.join("\n")
    }
}

/// A number of things, in the singular where it is one.
pub fn several(number: usize, thing: &str) -> String {
    match (number, thing.split_once(' ')) {
        (1, _) => format!("1 {thing}"),
        (_, Some((head, rest))) => format!("{number} {head}s {rest}"),
        (_, None) => format!("{number} {thing}s"),
    }
}

/// The first names of a list, and how many more there are.
fn few(names: &[&str]) -> String {
    const NAMED: usize = 7;
    if names.len() <= NAMED + 1 {
        return names.join(", ");
    }
    format!("{} and {} more", names[..NAMED].join(", "), names.len() - NAMED)
}

/// How things are put there, each way once, where the table has no room for it.
fn ways<'a>(rows: impl Iterator<Item = &'a ChartRow>) -> Vec<String> {
    let mut ways: Vec<(&str, Vec<&str>)> = Vec::new();
    for row in rows {
        match ways.iter_mut().find(|(how, _)| *how == row.how) {
            Some((_, points)) => points.push(&row.point),
            None => ways.push((&row.how, vec![&row.point])),
        }
    }
    ways.iter().map(|(how, points)| dim(&paragraph(&format!("{}: {how}.", few(points)), "  ", "    "))).collect()
}

/// What to mind, each sentence once, with the places it concerns.
fn minds<'a>(rows: impl Iterator<Item = (&'a str, &'a [String])>) -> Vec<String> {
    gathered(rows).iter().map(|(places, text)| dim(&paragraph(&format!("{places}: {text}"), "  ", "    "))).collect()
}

/// An amount with its range.
fn range(dose: Dose, units: System) -> String {
    let [low, likely, high] =
        [dose.low, dose.likely, dose.high].map(|end| Dose { low: end, likely: end, high: end, unit: dose.unit }.amount().show(units));
    format!("{likely} ({low} to {high})")
}
