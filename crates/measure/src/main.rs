//! Times the program's sums against general-purpose libraries, and how they grow: `cargo xtask measure` prepares the others and runs it.
#![expect(clippy::print_stdout, clippy::print_stderr, reason = "a developer's tool says what it is doing and what it found")]

mod calls;
mod clock;
mod fit;
mod fluids;
mod ladders;
mod log;
mod needs;
mod others;
mod page;
mod year;

use page::Compared;
use serde_json::json;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let python = std::env::args().nth(1).ok_or("usage: measure PYTHON")?;
    let compared = compared(&python)?;
    eprintln!("the school room");
    let school_room = ladders::school_room()?;
    eprintln!("more and more needs");
    let mut growths = needs::growth()?;
    eprintln!("more and more fluids");
    growths.push(fluids::growth()?);
    eprintln!("a longer and longer log");
    growths.extend(log::growth()?);
    print!("{}", page::page(&compared, school_room, &growths));
    match compared.iter().find(|row| !row.agrees()) {
        Some(row) => Err(format!("{}, {}: the answers differ by more than is allowed", row.what, row.others).into()),
        None => Ok(()),
    }
}

fn compared(python: &str) -> Result<Vec<Compared>, Box<dyn std::error::Error>> {
    eprintln!("our sums");
    let (index, dew, ladders, year) = (calls::indices()?, calls::dew_points()?, ladders::ladders()?, year::year()?);
    eprintln!("their sums");
    let asked = json!({
        "index": index.asked,
        "dew": dew.asked,
        "ladders": ladders.iter().map(|ladder| &ladder.asked).collect::<Vec<_>>(),
        "year": year.asked,
    });
    let others = others::ask(python, &asked)?;
    let mut rows = vec![
        Compared {
            what: "viscosity index, one call",
            others: "chemicals",
            seconds: (index.seconds, others.index.seconds),
            difference: (largest(&index.answers, &others.index.answers), 0.3, "of an index"),
        },
        Compared {
            what: "dew point from humidity, one call",
            others: "PsychroLib",
            seconds: (dew.seconds, others.dew.seconds),
            difference: (largest(&dew.answers, &others.dew.answers), 0.15, "K"),
        },
    ];
    rows.extend(ladders.iter().zip(&others.ladders).map(|(ladder, theirs)| Compared {
        what: ladder.what,
        others: "HiGHS, by SciPy",
        seconds: (ladder.seconds, theirs.seconds),
        difference: (largest(&ladder.optima, &theirs.answers), 1e-6, "of a weight"),
    }));
    for (by, theirs) in [("NumPy, equal steps, all machines at once", &others.year.steps), ("SciPy, `solve_ivp`", &others.year.solver)] {
        let seconds = (year.seconds, theirs.seconds);
        let (celsius, wet_hours) = year.differences(theirs);
        rows.push(Compared { what: "a year of damp: metal at each hour", others: by, seconds, difference: (celsius, 0.1, "K") });
        rows.push(Compared { what: "the same: wet hours of a machine", others: by, seconds, difference: (wet_hours, 5.0, "h") });
    }
    Ok(rows)
}

/// The largest difference of two lists; endless where one is longer.
fn largest(ours: &[f64], theirs: &[f64]) -> f64 {
    if ours.len() != theirs.len() {
        return f64::INFINITY;
    }
    ours.iter().zip(theirs).map(|(ours, theirs)| (ours - theirs).abs()).fold(0.0, f64::max)
}
