//! A machine taper: its angle, whether it holds by itself, and what a rubbing with blue says.

use fields::{Given, Kind};
use formulas::Notebook;
use formulas::taper::{Angle, Line, Reading, TAPERS, detectable_angle_seconds, half_angle_degrees, holds_itself, read_rubbing};
use units::{Length, Quantity, Range};

use super::common::said;
use super::{Asked, Outcome, Unanswered};

const TAPER: Given<&'static str> = Given::name("taper", "MT2", "iso-296", "the taper, as MT2, metric 80, 1:20 or 7:24");
const FRICTION: Given<f64> =
    Given::number("friction", "0.12", "common-practice", "friction of the faces: 0.12 wiped dry, 0.05 with a film of oil");
const FILM: Given<Length> = Given::quantity("film", "2 um", "common-practice", "thickness of the blue");
const LENGTH: Given<Length> = Given::quantity("length", "50 mm", "common-practice", "length in contact");
const LINES: Given<Option<&'static str>> = Given::maybe_name(
    "rubbed",
    "what rubbed off of three lines along the plug, per cent at large end/small end, as \"90/70, 85/75, 80/70\"",
);
const SPINDLE: Given<bool> = Given::flag("spindle", "no", "common-practice", "whether it is a spindle's, of which more contact is asked");
const TRUE_PART: Given<&'static str> =
    Given::choice("reference", &["plug", "socket"], "plug", "common-practice", "which of the two is known to be true");

pub(super) static KIND: Kind = Kind {
    name: "taper",
    about: "a taper's angle, whether it holds by itself, and what a rubbing with blue says",
    fields: &[TAPER.field(), FRICTION.field(), FILM.field(), LENGTH.field(), LINES.field(), SPINDLE.field(), TRUE_PART.field()],
};

/// A taper of one in so much, with its diameter at the gauge line where it is a standard one.
struct Named {
    name: String,
    one_in: f64,
    gauge_mm: Option<f64>,
}

pub(super) fn work(asked: &Asked<'_>, r: &mut Notebook) -> Result<Outcome, Unanswered> {
    let answers = asked.answers;
    let taper = named(answers.word(&TAPER))?;
    let half = half_angle_degrees(r, taper.one_in)?;
    let friction = answers.number(&FRICTION);
    let holds = holds_itself(r, half, friction)?;
    let seconds = detectable_angle_seconds(r, answers.quantity(&FILM), answers.quantity(&LENGTH))?;
    let mut outcome = Outcome::default().number(format!("{}: half its angle", taper.name), "°", round_to(half, 1e4)).says(format!(
        "{}°; the diameter grows by one in {}",
        decimals(half, 4),
        decimals(taper.one_in, 3)
    ));
    if let Some(gauge) = taper.gauge_mm {
        outcome = outcome.size("diameter at the gauge line", Range::exact(Length::from_base(gauge / 1e3)));
    }
    outcome = outcome
        .number("least error of angle the blue shows", "″", round_to(seconds, 1e2))
        .says("seconds of arc; less than that no rubbing tells")
        .way(
            "it holds by itself",
            holds,
            if holds {
                format!("the slope of its side is less than the friction of {}; wipe both dry", said(friction))
            } else {
                format!("the slope of its side is more than the friction of {}: it needs a drawbar", said(friction))
            },
        );
    if let Some(text) = answers.maybe_word(&LINES) {
        outcome = rubbing(asked, read_rubbing(r, lines(text)?, answers.flag(&SPINDLE))?, outcome);
    }
    Ok(outcome
        .caution(
            "Spindle still and out of gear, chips wiped off; never threadlock a taper, a trace of oil only for storage.",
            "common-practice",
        )
        .caution(
            "Seat it without a slap, turn it once by 30° at most, draw it straight out: more turning draws a picture of its own.",
            "common-practice",
        ))
}

fn decimals(value: f64, count: usize) -> String {
    units::show_number(value, units::Digits::Decimals(count))
}

fn round_to(value: f64, parts: f64) -> f64 {
    (value * parts).round() / parts
}

/// Reads a taper as people write it.
fn named(text: &str) -> Result<Named, Unanswered> {
    let plain: String = text.to_lowercase().split_whitespace().collect();
    let unknown = || {
        let known: Vec<&str> = TAPERS.iter().map(|taper| taper.name).collect();
        Unanswered::Contradiction(format!("`{text}` is no taper: write {}, or a ratio such as 1:20 or 7:24", known.join(", ")))
    };
    if let Some((rise, run)) = plain.split_once(':').or_else(|| plain.split_once("in")) {
        let rise: f64 = rise.parse().map_err(|_| unknown())?;
        let run: f64 = run.parse().map_err(|_| unknown())?;
        if rise > 0.0 && run > 0.0 && (run / rise).is_finite() {
            return Ok(Named { name: format!("{}:{}", said(rise), said(run)), one_in: run / rise, gauge_mm: None });
        }
        return Err(unknown());
    }
    let written = |name: &str| {
        let folded: String = name.to_lowercase().split_whitespace().collect();
        [folded.clone(), folded.replace("morse", "mt"), folded.replace("morse", "mk")].contains(&plain)
    };
    let found = TAPERS.iter().find(|taper| written(taper.name)).ok_or_else(unknown)?;
    Ok(Named { name: found.name.to_owned(), one_in: found.one_in, gauge_mm: Some(found.gauge_mm) })
}

/// Reads three lines of per cent at the large and small end.
fn lines(text: &str) -> Result<[Line; 3], Unanswered> {
    let unreadable = || {
        Unanswered::Contradiction(format!(
            "`{text}` is no rubbing: write three lines, per cent at large end/small end, as \"90/70, 85/75, 80/70\""
        ))
    };
    let share = |part: &str| {
        let number: f64 = part.trim().trim_end_matches('%').trim_end().parse().ok()?;
        (0.0..=100.0).contains(&number).then_some(number / 100.0)
    };
    let line = |part: &str| {
        let (large, small) = part.split_once('/')?;
        Some(Line { large_end: share(large)?, small_end: share(small)? })
    };
    let read: Option<Vec<Line>> = text.split(',').map(line).collect();
    read.and_then(|lines| <[Line; 3]>::try_from(lines).ok()).ok_or_else(unreadable)
}

fn rubbing(asked: &Asked<'_>, reading: Reading, outcome: Outcome) -> Outcome {
    let plug_is_true = asked.answers.word(&TRUE_PART) == "plug";
    let outcome = outcome.number("contact", "%", round_to(reading.contact * 100.0, 10.0)).says(if reading.accepted {
        "enough, and not light at the large end"
    } else {
        "not good enough: 75 % is asked, of spindles 80 %, in three sectors, and heavy at the large end"
    });
    let outcome = outcome.way(
        "round",
        reading.round,
        if reading.round { "all three lines rub alike" } else { "one line rubs less than the others: one of the two is oval or bent" },
    );
    let wrong = |plug: &str, socket: &str| if plug_is_true { socket.to_owned() } else { plug.to_owned() };
    match reading.angle {
        Angle::Same => outcome.way("the angles agree", true, "large and small end rub alike"),
        Angle::MaleFaster => outcome.way(
            "the angles agree",
            false,
            format!(
                "the plug tapers faster than the socket, for only the large end rubs: {}",
                wrong("take metal off the plug's large end", "the plug is true, so open the socket's large end")
            ),
        ),
        Angle::MaleSlower => outcome.way(
            "the angles agree",
            false,
            format!(
                "the plug tapers slower than the socket, for only the small end rubs: {}",
                wrong("take metal off the plug's small end", "the plug is true, so open the socket's small end")
            ),
        ),
    }
}
