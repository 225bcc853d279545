//! A shop that thinks in inches reads its jobs in inches, pounds and degrees Fahrenheit.

mod support;

use support::needs_of;

/// Units of the metric system; where the trade says both, the inch stands in brackets after it.
#[test]
fn jobs_are_told_in_the_units_of_the_shop() {
    let jobs = [
        ("harden", "steel = \"case\""),
        ("harden", "steel = \"oil-hardening\""),
        ("lock thread", "grade = \"8.8\""),
        ("tighten", "grade = \"8.8\"\ntorque = \"20 ft-lbf\""),
        ("tighten", "metals = [\"stainless\"]"),
        ("solder", ""),
        ("solder", "process = \"soft\""),
        ("finish", "immersed = true"),
        ("clean", "soil = \"grease\"\nbath = \"1 qt(US)\""),
        ("seal thread", "medium = \"steam\"\npressure = \"60 psi\""),
        ("bond", ""),
        ("free", ""),
        ("spot", ""),
        ("store", "boxed = true"),
    ];
    for (job, more) in jobs {
        for coldest in ["-5 °C", "12 °C"] {
            let text = format!("units = \"inch\"\n[room]\ncoldest = \"{coldest}\"\n[[work]]\njob = \"{job}\"\n{more}\n");
            for need in needs_of(&text) {
                for (said, _) in &need.mind {
                    for unit in [" °C", " mm ", " mm,", " mm.", " mL", " L ", " N·m", " kN", " bar ", " MPa", " kg"] {
                        // `20–40 °C (70–105 °F)` is told in both.
                        let told_twice = |place: usize| {
                            let rest = said[place + unit.trim_end_matches([' ', ',', '.']).len()..].trim_start();
                            let next = rest.strip_prefix(", ").unwrap_or_default();
                            rest.starts_with('(') || next.starts_with(|c: char| c.is_ascii_digit())
                        };
                        let alone = said.match_indices(unit).any(|(place, _)| !told_twice(place));
                        assert!(!alone, "{job}: `{unit}` in {said}");
                    }
                }
            }
        }
    }
}
