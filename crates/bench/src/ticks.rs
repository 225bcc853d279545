//! Where an axis is marked: at 1, 2 and 5 and their tenfold, as on a rule.

/// The values to mark between two ends.
pub(crate) fn ticks(low: f64, high: f64, logarithmic: bool) -> Vec<f64> {
    /// A scale of more decades than this is marked at 1 and 10 alone, lest the figures run together.
    const DECADES: f64 = 6.0;
    const MOST: f64 = 8.0;
    if !logarithmic {
        let step = step((high - low) / MOST);
        let first = (low / step).ceil();
        return (0..)
            .map(|count| (first + f64::from(count)) * step)
            .take_while(|value| *value <= high * (1.0 + 1e-9) + step * 1e-6)
            .collect();
    }
    let steps: &[f64] = if (high / low).log10() > DECADES { &[1.0] } else { &[1.0, 2.0, 5.0] };
    let decades = decades(low, high);
    let all = decades.flat_map(|decade| steps.iter().map(move |step| step * decade));
    all.filter(|value| (low * (1.0 - 1e-9)..=high * (1.0 + 1e-9)).contains(value)).collect()
}

fn decades(low: f64, high: f64) -> impl Iterator<Item = f64> {
    let first = low.log10().floor();
    (0..).map(move |count| 10_f64.powf(first + f64::from(count))).take_while(move |decade| *decade <= high * (1.0 + 1e-9))
}

/// The least step of 1, 2 or 5 that is not smaller than this.
fn step(least: f64) -> f64 {
    let decade = 10_f64.powf(least.log10().floor());
    [1.0, 2.0, 5.0, 10.0].map(|step| step * decade).into_iter().find(|step| *step >= least * (1.0 - 1e-9)).unwrap_or(least)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_logarithmic_axis_is_marked_as_a_slide_rule() {
        let marks = ticks(2.0, 100.0, true);
        assert_eq!(marks.len(), 6);
        assert!(marks.iter().zip([2.0, 5.0, 10.0, 20.0, 50.0, 100.0]).all(|(mark, expected)| (mark - expected).abs() < 1e-9));
    }

    #[test]
    fn a_plain_axis_is_marked_in_even_steps() {
        assert_eq!(ticks(-20.0, 110.0, false), [-20.0, 0.0, 20.0, 40.0, 60.0, 80.0, 100.0]);
    }
}
