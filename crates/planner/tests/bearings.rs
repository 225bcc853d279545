//! What a rolling bearing asks where its film is thin, and where it starts in the cold.

mod support;

use planner::need::Need;
use planner::verdict::{Grade, verdict};
use reference::Reference;
use support::{grade_of, need, point};
use units::System;

fn bearing(room: &str, more: &str) -> Need {
    need(&format!("[room]\n{room}\n{}", point("rolling bearing", more)), "p")
}

const WARM: &str = "coldest = \"10 °C\"\nusual = \"20 °C\"\nhottest = \"35 °C\"";

/// ISO 281, from memory: a viscosity ratio of 0.4 to 1 wants antiwear additives. By hand, 25 × 52 mm: ν₁ = 45 000·n^−0.83/√38.5, 64 mm²/s at
/// 300 rev/min and 159 at 100; the base oils of the greases have 110 to 220 mm²/s at 40 °C and about two fifths of that in a bearing of 60 °C.
#[test]
fn a_thin_film_wants_antiwear_additives() {
    let grease = |speed: &str| bearing(WARM, &format!("fitting = \"grease nipple\"\nspeed = \"{speed}\""));
    let found = |need: &Need, fluid: &str, demand: &str| {
        let reference = Reference::embedded();
        let verdict = verdict(need, reference.fluid(fluid).unwrap(), reference, System::Metric);
        verdict.findings.into_iter().find(|finding| finding.demand == demand).map(|finding| finding.grade)
    };
    let slow = grease("300 rpm");
    assert_eq!(found(&slow, "lithium-2", "thick enough for its speed"), Some(Grade::WillDo));
    assert_eq!(found(&slow, "lithium-2", "antiwear where the film is thin"), Some(Grade::Wrong));
    // Slower still, additives make the thicker grease serve.
    assert_eq!(grade_of(&grease("100 rpm"), "lithium-ep-2"), Grade::WillDo);
    // Thick enough, nothing more is asked for.
    assert_eq!(grade_of(&grease("1200 rpm"), "lithium-2"), Grade::Right);
}

/// Common practice: NLGI 2, and 1 where it starts below 5 °C.
#[test]
fn a_cold_bearing_takes_a_softer_grease() {
    let at = |coldest: &str| {
        bearing(
            &format!("coldest = \"{coldest}\"\nusual = \"15 °C\"\nhottest = \"25 °C\""),
            "fitting = \"grease nipple\"\nspeed = \"1200 rpm\"",
        )
    };
    assert_eq!(grade_of(&at("-5 °C"), "lithium-1"), Grade::Right);
    assert_ne!(grade_of(&at("10 °C"), "lithium-1"), Grade::Right);
    assert_eq!(grade_of(&at("-5 °C"), "lithium-2"), Grade::Right);
}
