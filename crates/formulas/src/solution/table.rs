//! Reading between the rows of a table.

/// A curve through points in order of `x`: cubic pieces that rise and fall only where the points do (Fritsch and Carlson 1980), level
/// beyond the ends.
pub(super) fn between(points: &[(f64, f64)], x: f64) -> f64 {
    let after = points.partition_point(|(known, _)| *known <= x);
    let (Some(&(x_0, y_0)), Some(&(x_1, y_1))) = (after.checked_sub(1).and_then(|before| points.get(before)), points.get(after)) else {
        let end = if after == 0 { points.first() } else { points.last() };
        return end.map_or(f64::NAN, |(_, y)| *y);
    };
    let width = x_1 - x_0;
    let t = (x - x_0) / width;
    let (s_0, s_1) = (slope(points, after - 1), slope(points, after));
    let rest = 1.0 - t;
    y_0 * (1.0 + 2.0 * t) * rest * rest + y_1 * t * t * (3.0 - 2.0 * t) + width * t * rest * (s_0 * rest - s_1 * t)
}

/// Slope at a point: the weighted harmonic mean of the slopes on its two sides, level where they differ in sign; at an end the one
/// there is.
fn slope(points: &[(f64, f64)], at: usize) -> f64 {
    let secant = |from: usize| match points.get(from..from + 2) {
        Some(&[(x_0, y_0), (x_1, y_1)]) => Some((x_1 - x_0, (y_1 - y_0) / (x_1 - x_0))),
        _ => None,
    };
    match (at.checked_sub(1).and_then(secant), secant(at)) {
        (Some((h_0, d_0)), Some((h_1, d_1))) if d_0 * d_1 > 0.0 => {
            let (w_0, w_1) = (2.0 * h_1 + h_0, h_1 + 2.0 * h_0);
            (w_0 + w_1) / (w_0 / d_0 + w_1 / d_1)
        }
        (Some((_, only)), None) | (None, Some((_, only))) => only,
        _ => 0.0,
    }
}

#[cfg(test)]
mod tests {
    use super::between;

    /// By hand: a straight line stays straight, and a hill is not overshot.
    #[test]
    fn runs_through_its_points_and_no_higher() {
        let line = [(0.0, 1.0), (1.0, 3.0), (4.0, 9.0)];
        for x in [0.0, 0.3, 1.0, 2.5, 4.0] {
            assert!((between(&line, x) - (1.0 + 2.0 * x)).abs() < 1e-12);
        }
        let hill = [(0.0, 0.0), (1.0, 5.0), (2.0, 5.1), (3.0, 1.0)];
        for tenth in 0..=30 {
            assert!((0.0..=5.1).contains(&between(&hill, f64::from(tenth) / 10.0)));
        }
        assert!((between(&hill, -1.0), between(&hill, 9.0)) == (0.0, 1.0));
    }
}
