//! What the macros show: text, numbers put in, MathML.
//!
//! The expected strings are wording, written down from how such formulas are printed; they are no results.

#![expect(non_snake_case, reason = "symbols match the source")]
#![expect(clippy::unwrap_used, reason = "a test that cannot go on fails")]

use formulas::math::{abs, exp, ln, log10, max, min, pow, sqrt};
use formulas::sources::{ASTM_D341, DEFINITION};
use formulas::viscosity::{Measured, viscosity_at};
use formulas::working::{Entry, Part, Step, fill, number};
use formulas::{Caution, FormulaError, Notebook, Recorder, Silent, given, solve, step};
use uom::si::f64::{KinematicViscosity, Length, ThermodynamicTemperature};
use uom::si::kinematic_viscosity::square_millimeter_per_second as mm2_per_s;
use uom::si::length::{meter, millimeter};
use uom::si::thermodynamic_temperature::{degree_celsius, kelvin};

/// The one step an expression makes.
macro_rules! shown {
    ($($symbol:ident = $value:expr),* ; $($tokens:tt)+) => {{
        fn work<R: Recorder>(r: &mut R) {
            $(let $symbol: f64 = $value;)*
            step!(r, y [] = $($tokens)+, DEFINITION);
            assert!(y.is_finite());
        }
        let mut notebook = Notebook::new();
        work(&mut notebook);
        let step: Step = notebook.steps().next().unwrap().clone();
        step
    }};
}

#[test]
fn the_line_of_a_viscosity() {
    fn work<R: Recorder>(r: &mut R) {
        given!(r, A [] = 9.0, "constant");
        given!(r, B [] = 3.5, "constant");
        given!(r, T[kelvin] = ThermodynamicTemperature::new::<kelvin>(313.15), "temperature");
        step!(r, nu[mm2_per_s] = pow(10.0, pow(10.0, A - B * log10(T))) - 0.7, ASTM_D341);
        assert!(nu > 0.0);
    }
    let mut notebook = Notebook::new();
    work(&mut notebook);
    let lines = notebook.lines();
    assert_eq!(lines[0], "A = 9  (constant)");
    assert_eq!(lines[2], "T = 313 K  (temperature)");
    assert!(lines[3].starts_with("ν = 10^(10^(A − B·log₁₀ T)) − 0.7 = "), "{}", lines[3]);
    assert!(lines[3].ends_with(" mm²/s  [astm-d341]"), "{}", lines[3]);
    let step = notebook.steps().next().unwrap();
    assert_eq!(step.filled, "10^(10^(9 − 3.5·log₁₀ 313.15)) − 0.7");
    assert_eq!(
        step.mathml,
        "<mrow><msup><mn>10</mn><msup><mn>10</mn><mrow><mi>A</mi><mo>−</mo><mrow><mi>B</mi><mo>⋅</mo><mrow><msub><mi>log</mi><mn>10</mn>\
         </msub><mo>\u{2061}</mo><mi>T</mi></mrow></mrow></mrow></msup></msup><mo>−</mo><mn>0.7</mn></mrow>"
    );
}

#[test]
fn parentheses_only_where_they_are_needed() {
    assert_eq!(shown!(a = 1.0, b = 2.0, c = 3.0; (a + b) * c).text, "(a + b)·c");
    assert_eq!(shown!(a = 1.0, b = 2.0, c = 3.0; a + (b * c)).text, "a + b·c");
    assert_eq!(shown!(a = 1.0, b = 2.0, c = 3.0; a - (b - c)).text, "a − (b − c)");
    assert_eq!(shown!(a = 1.0, b = 2.0, c = 3.0; a - (b + c)).text, "a − (b + c)");
    assert_eq!(shown!(a = 1.0, b = 2.0, c = 3.0; (a - b) - c).text, "a − b − c");
    assert_eq!(shown!(a = 1.0, b = 2.0, c = 3.0; a / (b * c)).text, "a/(b·c)");
    assert_eq!(shown!(a = 1.0, b = 2.0, c = 3.0; a / b * c).text, "(a/b)·c");
    assert_eq!(shown!(a = 1.0, b = 2.0, c = 3.0; a * (b / c)).text, "a·(b/c)");
    assert_eq!(shown!(a = 1.0, b = 2.0; -(a + b)).text, "−(a + b)");
    assert_eq!(shown!(a = 1.0, b = 2.0; a - -b).text, "a − (−b)");
    assert_eq!(shown!(a = 1.0, b = 2.0; -a * b).text, "−a·b");
    assert_eq!(shown!(a = 1.0, b = 2.0; pow(-a, 2.0) * b).text, "(−a)²·b");
    assert_eq!(shown!(a = 1.0, b = 2.0; pow(a, b + 1.0)).text, "a^(b + 1)");
    assert_eq!(shown!(a = 1.0, b = 2.0; pow(a / b, -0.5)).text, "(a/b)^−0.5");
    assert_eq!(shown!(a = 1.0; pow(pow(a, 2.0), 3.0)).text, "(a²)³");
    assert_eq!(shown!(a = 1.0; pow(log10(a), 2.0)).text, "(log₁₀ a)²");
}

#[test]
fn functions_numbers_and_symbols() {
    assert_eq!(shown!(x = 2.0; sqrt(x)).text, "√x");
    assert_eq!(shown!(x = 2.0; sqrt(x + 1.0)).text, "√(x + 1)");
    assert_eq!(shown!(x = 2.0; exp(-x) + ln(x) + abs(x - 3.0)).text, "exp(−x) + ln x + |x − 3|");
    assert_eq!(shown!(x = 2.0; min(x, 1e-3) + max(x, 45000.0)).text, "min(x, 0.001) + max(x, 45000)");
    assert_eq!(shown!(x = 2.0; 1.5e-8 * x + 1e12).text, "1.5×10⁻⁸·x + 10¹²");
    assert_eq!(shown!(x = 2.0; std::f64::consts::PI * pow(x, 2.0) / 4.0).text, "π·x²/4");
    assert_eq!(
        shown!(Delta_T = 2.0, nu_100 = 1.0, F_t = 3.0, K_A = 1.0, x_max = 1.0; Delta_T + nu_100 + F_t + K_A + x_max).text,
        "ΔT + ν₁₀₀ + Fₜ + K_A + xₘₐₓ"
    );
    assert_eq!(shown!(Omega = 2.0, epsilon = 1.0; Omega + epsilon).text, "Ω + ε");
    assert_eq!(shown!(T_1 = 2.0; T_1 + 1.0).mathml, "<mrow><msub><mi>T</mi><mn>1</mn></msub><mo>+</mo><mn>1</mn></mrow>");
    assert_eq!(shown!(a = 1.0, b = 2.0; a / b).mathml, "<mfrac><mi>a</mi><mi>b</mi></mfrac>");
    assert_eq!(shown!(a = 1.0; sqrt(a)).mathml, "<msqrt><mi>a</mi></msqrt>");
    assert_eq!(shown!(a = 1.0; exp(a)).mathml, "<msup><mi>e</mi><mi>a</mi></msup>");
}

#[test]
fn cases_and_comparisons() {
    let step = shown!(n = 500.0; if n < 1000.0 { n * 2.0 } else if n >= 5e3 && n != 6e3 { 1.0 } else { n });
    assert_eq!(step.text, "{ n·2 if n < 1000; 1 if n ≥ 5000 and n ≠ 6000; n otherwise }");
    assert!(step.mathml.contains("<mo>&lt;</mo>"), "{}", step.mathml);
    assert_eq!(step.value, 1000.0);
}

#[test]
fn numbers_put_in_keep_their_meaning() {
    assert_eq!(shown!(a = 3.0, b = -2.0; a - b).filled, "3 − (−2)");
    assert_eq!(shown!(a = 3e-9, b = 2.0; pow(a, 2.0) * b).filled, "(3×10⁻⁹)²·2");
    assert_eq!(fill(&[Part::Text("√"), Part::Value(12.5)]), "√12.5");
    // A step may use the name it replaces.
    assert_eq!(shown!(y = 4.0; y / 2.0).filled, "4/2");
}

#[test]
fn a_solver_shows_its_root_and_residual() {
    fn work<R: Recorder>(r: &mut R) -> Result<f64, FormulaError> {
        given!(r, a [] = 2.0, "number");
        solve!(r, x [] in (0.0, a): pow(x, 2.0) == a, DEFINITION);
        Ok(x)
    }
    let mut notebook = Notebook::new();
    assert!((work(&mut notebook).unwrap() - std::f64::consts::SQRT_2).abs() < 1e-12);
    let step = notebook.steps().next().unwrap();
    assert_eq!(step.text, "x² = a");
    assert_eq!(step.filled, "x² = 2");
    assert!(step.residual.unwrap().abs() < 1e-12);
    assert!(step.line().starts_with("x = 1.4142 solves x² = a (residual "), "{}", step.line());
}

#[test]
fn numbers_have_honest_digits() {
    for (value, text) in [
        (68.0, "68.0"),
        (313.15, "313"),
        (18_310.4, "18310"),
        (0.05, "0.0500"),
        (0.0, "0"),
        (-2.5, "−2.50"),
        (1.2e-6, "1.20×10⁻⁶"),
        (9.999, "10.0"),
    ] {
        assert_eq!(number(value, 3), text);
    }
}

fn worked() -> Notebook {
    let mut notebook = Notebook::new();
    let nu = KinematicViscosity::new::<mm2_per_s>;
    let at = ThermodynamicTemperature::new::<degree_celsius>;
    // A thin oil, so that the solver for the small-viscosity terms is used, and a temperature outside the two points.
    viscosity_at(&mut notebook, Measured::at_40(nu(2.2)), Measured::at_100(nu(0.9)), at(150.0)).unwrap();
    let journal = formulas::plain_bearing::Journal {
        diameter: Length::new::<millimeter>(25.0),
        length: Length::new::<millimeter>(25.0),
        load: uom::si::f64::Force::new::<uom::si::force::newton>(500.0),
        speed: uom::si::f64::AngularVelocity::new::<uom::si::angular_velocity::revolution_per_minute>(600.0),
        clearance: Length::new::<millimeter>(0.04),
        journal_roughness: Length::new::<millimeter>(0.0004),
        bearing_roughness: Length::new::<millimeter>(0.0008),
    };
    let eta = uom::si::f64::DynamicViscosity::new::<uom::si::dynamic_viscosity::millipascal_second>(40.0);
    formulas::plain_bearing::film_regime(&mut notebook, &journal, eta).unwrap();
    formulas::rolling_bearing::reference_viscosity(&mut notebook, journal.speed, journal.diameter).unwrap();
    formulas::slideway::slide_viscosity(&mut notebook, uom::si::f64::Pressure::new::<uom::si::pressure::megapascal>(0.05), None);
    formulas::steam::saturation_pressure(&mut notebook, at(20.0)).unwrap();
    notebook
}

#[test]
fn mathml_is_well_formed() {
    let notebook = worked();
    let steps = notebook.steps().map(Step::math).chain(notebook.given_values().map(formulas::working::Given::math));
    let mut seen = 0;
    for math in steps {
        let document = roxmltree::Document::parse(&math).unwrap_or_else(|error| panic!("{error} in {math}"));
        assert_eq!(document.root_element().tag_name().name(), "math");
        // Fractions, powers and subscripts have exactly two children.
        for node in document.descendants().filter(|node| matches!(node.tag_name().name(), "mfrac" | "msup" | "msub")) {
            assert_eq!(node.children().filter(roxmltree::Node::is_element).count(), 2, "{math}");
        }
        seen += 1;
    }
    assert!(seen > 60, "only {seen} entries");
}

#[test]
fn errors_say_what_would_do() {
    use formulas::{sources, viscosity_index::viscosity_index};
    let nu = KinematicViscosity::new::<mm2_per_s>;
    assert_eq!(
        viscosity_index(&mut Silent, nu(4.6), nu(1.6)).unwrap_err().to_string(),
        "the viscosity at 100 °C is 1.6 mm²/s; what is known of it (astm-d2270) covers 2 mm²/s and more, so check the value, or take the answer from a data sheet"
    );
    assert_eq!(
        viscosity_index(&mut Silent, nu(5.0), nu(8.0)).unwrap_err().to_string(),
        "the cool point (5 mm²/s at 40 °C) must be cooler and thicker than the hot one (8 mm²/s at 100 °C); check that the two were not exchanged"
    );
    // Every source has a key of its own.
    let keys: std::collections::HashSet<_> = sources::ALL.iter().map(|source| source.0).collect();
    assert_eq!(keys.len(), sources::ALL.len());
}

#[test]
fn cautions_are_kept_once() {
    let mut notebook = Notebook::new();
    let caution = Caution::Provided { that: "the oil is clean" };
    notebook.caution(caution.clone());
    notebook.caution(caution);
    assert_eq!(notebook.lines(), ["! This holds only if the oil is clean."]);
    assert!(worked().entries().iter().any(|entry| matches!(entry, Entry::Caution(Caution::Extrapolated { .. }))));
}

#[test]
fn quantities_are_given_in_the_unit_named() {
    fn work<R: Recorder>(r: &mut R) -> f64 {
        given!(r, L[millimeter] = Length::new::<meter>(1.5), "length");
        L
    }
    assert_eq!(work(&mut Silent), 1500.0);
}

/// The silent recorder takes no room, and a formula run with it takes no longer than the same arithmetic written out.
#[test]
fn silence_costs_nothing() {
    use std::hint::black_box;
    use std::time::{Duration, Instant};
    fn by_hand(n: f64, d_m: f64) -> f64 {
        if n < 1000.0 { 45000.0 * n.powf(-0.83) * d_m.powf(-0.5) } else { 4500.0 * n.powf(-0.5) * d_m.powf(-0.5) }
    }
    fn best(mut work: impl FnMut() -> f64) -> Duration {
        let run = |work: &mut dyn FnMut() -> f64| {
            let start = Instant::now();
            for _ in 0..2000 {
                black_box(work());
            }
            start.elapsed()
        };
        (0..40).map(|_| run(&mut work)).min().unwrap()
    }
    assert_eq!(size_of::<Silent>(), 0);
    let speed = uom::si::f64::AngularVelocity::new::<uom::si::angular_velocity::revolution_per_minute>(600.0);
    let d_m = Length::new::<millimeter>(38.5);
    let silent =
        best(|| formulas::rolling_bearing::reference_viscosity(&mut Silent, black_box(speed), black_box(d_m)).unwrap().get::<mm2_per_s>());
    let plain = best(|| by_hand(black_box(600.0), black_box(38.5)));
    let kept = best(|| {
        formulas::rolling_bearing::reference_viscosity(&mut Notebook::new(), black_box(speed), black_box(d_m)).unwrap().get::<mm2_per_s>()
    });
    // Checking the inputs and changing units is paid for; recording would cost many times as much.
    assert!(silent < plain * 3, "silent {silent:?}, by hand {plain:?}");
    assert!(kept > silent * 3, "kept {kept:?}, silent {silent:?}: the notebook is not kept, so this test shows nothing");
}
