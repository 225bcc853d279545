//! A curve of times, and the laws laid through it.

/// Times by the number of things.
#[derive(Debug, Clone)]
pub(crate) struct Growth {
    /// What was timed.
    pub what: &'static str,
    /// What there was more and more of.
    pub of: &'static str,
    /// How many there were, and how many seconds it took.
    pub points: Vec<(f64, f64)>,
}

/// A law laid through a curve.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Fit {
    /// k of t ~ n^k.
    pub exponent: Exponent,
    /// k of t ~ (n·log n)^k: where it is no more than 1, time grows no worse than n·log n.
    pub against_n_log_n: Exponent,
    /// c of t = c·n·ln n, in seconds.
    pub factor: f64,
    /// The most by which a time departs from that, as a factor.
    pub worst: f64,
}

/// An exponent, by least squares on the logarithms, so that each point counts for as much as any other.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Exponent {
    /// Over the whole curve.
    pub whole: f64,
    /// Over the last three points, where what does not grow no longer hides what does.
    pub end: f64,
}

impl Growth {
    pub(crate) fn new(what: &'static str, of: &'static str) -> Self {
        Self { what, of, points: Vec::new() }
    }

    pub(crate) fn add(&mut self, things: f64, seconds: f64) {
        self.points.push((things, seconds));
    }

    pub(crate) fn fit(&self) -> Fit {
        let departures: Vec<f64> = self.points.iter().map(|&(n, t)| (t / n_log_n(n)).ln()).collect();
        let factor = mean(departures.iter().copied());
        let worst = departures.iter().map(|departure| (departure - factor).abs()).fold(0.0, f64::max);
        Fit { exponent: self.exponent(|n| n), against_n_log_n: self.exponent(n_log_n), factor: factor.exp(), worst: worst.exp() }
    }

    fn exponent(&self, law: fn(f64) -> f64) -> Exponent {
        let logs: Vec<(f64, f64)> = self.points.iter().map(|&(n, t)| (law(n).ln(), t.ln())).collect();
        Exponent { whole: slope(&logs), end: slope(&logs[logs.len().saturating_sub(3)..]) }
    }
}

fn n_log_n(n: f64) -> f64 {
    n * n.ln()
}

fn mean(values: impl Iterator<Item = f64>) -> f64 {
    let (sum, count) = values.fold((0.0, 0.0), |(sum, count), value| (sum + value, count + 1.0));
    sum / count
}

fn slope(points: &[(f64, f64)]) -> f64 {
    let (x_mean, y_mean) = (mean(points.iter().map(|point| point.0)), mean(points.iter().map(|point| point.1)));
    let over: f64 = points.iter().map(|(x, y)| (x - x_mean) * (y - y_mean)).sum();
    let under: f64 = points.iter().map(|(x, _)| (x - x_mean).powi(2)).sum();
    over / under
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A curve made of a law has that law's exponents, by definition.
    #[test]
    fn a_curve_has_the_exponents_it_was_made_with() {
        for (law, exponent, against) in
            [((|n: f64| 3.0 * n * n) as fn(f64) -> f64, Some(2.0), None), (|n: f64| 5e-6 * n * n.ln(), None, Some(1.0))]
        {
            let mut growth = Growth::new("a law", "things");
            for n in [100.0, 1000.0, 2000.0, 10_000.0, 50_000.0] {
                growth.add(n, law(n));
            }
            let fit = growth.fit();
            for (found, expected) in [(fit.exponent, exponent), (fit.against_n_log_n, against)] {
                let near = |one: f64| expected.is_none_or(|expected| (one - expected).abs() < 1e-9);
                assert!(near(found.whole) && near(found.end), "{found:?}");
            }
            assert!(against.is_none() || ((fit.factor - 5e-6).abs() < 1e-12 && (fit.worst - 1.0).abs() < 1e-9), "{fit:?}");
        }
    }
}
