//! The page of what was measured.

use std::fmt::Write;

use crate::fit::{Exponent, Growth};

/// A sum worked out here and by others.
pub(crate) struct Compared {
    /// What was worked out.
    pub what: &'static str,
    /// By whom else.
    pub others: &'static str,
    /// Our time and theirs, in seconds.
    pub seconds: (f64, f64),
    /// The largest difference of the answers, the most that is allowed, and their unit.
    pub difference: (f64, f64, &'static str),
}

impl Compared {
    /// Whether the answers are the same, as far as is allowed.
    pub fn agrees(&self) -> bool {
        self.difference.0 <= self.difference.1
    }
}

/// All of it, as Markdown.
pub(crate) fn page(compared: &[Compared], school_room: [f64; 2], growths: &[Growth]) -> String {
    let mut page = head();
    against(&mut page, compared);
    let [ladder, whole] = school_room.map(time);
    let _ = write!(
        page,
        "\n## The school room\n\nThe ladder of `examples/school-room.toml` with the exact optimum beside each rung and 500 draws: {ladder}; wanted is \
         under 1 s. Its whole plan, from the text of the file to the report: {whole}.\n\n## Growth\n"
    );
    for group in growths.chunk_by(|one, other| one.of == other.of) {
        curves(&mut page, group);
    }
    fits(&mut page, growths);
    page
}

fn head() -> String {
    let cores = std::thread::available_parallelism().map_or(1, usize::from);
    let day = jiff::tz::TimeZone::UTC.to_datetime(jiff::Timestamp::now()).date();
    format!(
        "# Measured\n\nWritten by `cargo xtask measure` on {day}, on a machine of {cores} cores that other work ran on as well. Every time is the \
         shortest of several runs, since other work only makes a run longer; both sides of a comparison ran one after the other on the same \
         inputs.\n"
    )
}

fn against(page: &mut String, compared: &[Compared]) {
    let _ = write!(
        page,
        "\n## Against general-purpose libraries\n\n| what | measured against | ours | theirs | theirs ÷ ours | largest difference | allowed |\n\
         | --- | --- | ---: | ---: | ---: | ---: | ---: |\n"
    );
    for Compared { what, others, seconds: (ours, theirs), difference: (found, allowed, unit) } in compared {
        let (ratio, found, allowed) = (digits(theirs / ours), digits(*found), digits(*allowed));
        let _ = writeln!(page, "| {what} | {others} | {} | {} | {ratio} | {found} {unit} | {allowed} {unit} |", time(*ours), time(*theirs));
    }
    let _ = write!(
        page,
        "\nA single call of a Python library carries the interpreter's own cost, which is much of the first two ratios. At the rows of the \
         standard's table the two indices lie within 0.2; between them `chemicals` goes straight and the quadratics do not. PsychroLib has another \
         equation for the vapour pressure. The integer programs are written from the definition of the ladder and given to HiGHS whole, for each rung anew, and only its solving is timed; our time is that of the \
         whole ladder. The year is that of ten machines at twelve steps an hour.\n"
    );
}

fn curves(page: &mut String, group: &[Growth]) {
    let Some(first) = group.first() else { return };
    let _ = write!(page, "\n| {} |", first.of);
    for growth in group {
        let _ = write!(page, " {} |", growth.what);
    }
    let _ = writeln!(page, "\n| ---: |{}", " ---: |".repeat(group.len()));
    for (place, (things, _)) in first.points.iter().enumerate() {
        let _ = write!(page, "| {things} |");
        for growth in group {
            let _ = write!(page, " {} |", growth.points.get(place).map_or_else(String::new, |(_, seconds)| time(*seconds)));
        }
        page.push('\n');
    }
}

fn fits(page: &mut String, growths: &[Growth]) {
    let _ = write!(
        page,
        "\nThe laws laid through these curves: the exponent of t ~ n^k, and of t ~ (n·log n)^k, which is 1 or less where time grows no worse than \
         n·log n; each over the whole curve and, in brackets, over its last three points. Then c of t = c·n·ln n, and by what factor the times \
         depart from it at most.\n\n| what | n^k | (n·log n)^k | c | departs by |\n| --- | ---: | ---: | ---: | ---: |\n"
    );
    // A zero below nothing is a zero.
    let hundredths = |value: f64| (value * 100.0).round() / 100.0 + 0.0;
    let both = |exponent: Exponent| format!("{:.2} ({:.2})", hundredths(exponent.whole), hundredths(exponent.end));
    for growth in growths {
        let fit = growth.fit();
        let (exponent, against) = (both(fit.exponent), both(fit.against_n_log_n));
        let (what, of, factor, worst) = (growth.what, growth.of, time(fit.factor), digits(fit.worst));
        let _ = writeln!(page, "| {what}, by {of} | {exponent} | {against} | {factor} | {worst} × |");
    }
}

fn time(seconds: f64) -> String {
    let (value, unit) = match seconds {
        s if s < 1e-6 => (s * 1e9, "ns"),
        s if s < 1e-3 => (s * 1e6, "µs"),
        s if s < 1.0 => (s * 1e3, "ms"),
        s => (s, "s"),
    };
    format!("{} {unit}", digits(value))
}

/// Two digits, or whatever stands before the point: no time is known better.
fn digits(value: f64) -> String {
    match value.abs() {
        size if size >= 10.0 => format!("{value:.0}"),
        size if size >= 1.0 => format!("{value:.1}"),
        size if size >= 0.1 => format!("{value:.2}"),
        size if size >= 0.001 => format!("{value:.4}"),
        0.0 => "0".to_owned(),
        _ => format!("{value:.0e}"),
    }
}
