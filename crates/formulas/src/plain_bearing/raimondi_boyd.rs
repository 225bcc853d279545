//! The charts of Raimondi and Boyd for the full bearing, as nodes: from memory, and within 3 % of Reynolds' equation solved directly
//! (`tests/reynolds.rs`).

use core::f64::consts::PI;

/// One node of a curve: eccentricity ε, Sommerfeld number, friction variable (r/c)·f, flow variable Q/(r·c·N·L), share that leaves sideways.
#[derive(Clone, Copy)]
struct Node {
    eccentricity: f64,
    s: f64,
    f: f64,
    flow: f64,
    side: f64,
}

const fn node(eccentricity: f64, s: f64, f: f64, flow: f64, side: f64) -> Node {
    Node { eccentricity, s, f, flow, side }
}

/// Length over diameter 1, ½ and ¼.
const LONG: [Node; 7] = [
    node(0.1, 1.33, 26.4, 3.37, 0.150),
    node(0.2, 0.631, 12.8, 3.59, 0.280),
    node(0.4, 0.264, 5.79, 3.99, 0.497),
    node(0.6, 0.121, 3.22, 4.33, 0.680),
    node(0.8, 0.0446, 1.70, 4.62, 0.842),
    node(0.9, 0.0188, 1.05, 4.74, 0.919),
    node(0.97, 0.004_74, 0.514, 4.82, 0.973),
];
#[expect(clippy::approx_constant, reason = "a share read from the chart, which only looks like 1/π")]
const HALF: [Node; 7] = [
    node(0.1, 4.31, 85.6, 3.43, 0.173),
    node(0.2, 2.03, 40.9, 3.72, 0.318),
    node(0.4, 0.779, 17.0, 4.29, 0.552),
    node(0.6, 0.319, 8.10, 4.85, 0.730),
    node(0.8, 0.0923, 3.26, 5.41, 0.874),
    node(0.9, 0.0313, 1.60, 5.69, 0.939),
    node(0.97, 0.006_09, 0.610, 5.88, 0.980),
];
const QUARTER: [Node; 7] = [
    node(0.1, 16.2, 322.0, 3.45, 0.180),
    node(0.2, 7.57, 153.0, 3.76, 0.330),
    node(0.4, 2.83, 61.1, 4.37, 0.567),
    node(0.6, 1.07, 26.7, 4.99, 0.746),
    node(0.8, 0.261, 8.80, 5.60, 0.884),
    node(0.9, 0.0736, 3.50, 5.91, 0.945),
    node(0.97, 0.0101, 0.922, 6.12, 0.984),
];
/// An endless bearing, whose film no real one exceeds: eccentricity and Sommerfeld number.
const ENDLESS: [(f64, f64); 6] = [(0.1, 0.240), (0.2, 0.123), (0.4, 0.0626), (0.6, 0.0389), (0.8, 0.021), (0.9, 0.0115)];

/// Eccentricity at the thick end of the charts.
pub const THICKEST: f64 = 0.1;
/// Eccentricity at the thin end of the charts.
pub const THINNEST: f64 = 0.97;

/// The curve at a ratio of length to diameter: S and (r/c)·f between two charted ratios go as powers of it, the flow as its logarithm.
fn curve(ratio: f64) -> [Node; 7] {
    // A slope carried beyond 1 would promise a long bearing more film than an endless one has, so longer ones are worked as length 1.
    let (short, long, share) = match ratio {
        ratio if ratio >= 1.0 => (&LONG, &LONG, 0.0),
        ratio if ratio >= 0.5 => (&HALF, &LONG, (ratio / 0.5).log2()),
        ratio => (&QUARTER, &HALF, (ratio / 0.25).log2()),
    };
    let mut curve = *short;
    for (node, long) in curve.iter_mut().zip(long) {
        let power = |a: f64, b: f64| (a.ln() + (b / a).ln() * share).exp();
        let straight = |a: f64, b: f64| a + (b - a) * share;
        node.s = power(node.s, long.s);
        node.f = power(node.f, long.f);
        node.flow = straight(node.flow, long.flow);
        node.side = straight(node.side, long.side);
    }
    curve
}

/// Eccentricity at a Sommerfeld number on a curve of (ε, S), ε rising.
fn eccentricity_on(curve: &[(f64, f64)], s: f64) -> f64 {
    let (Some(first), Some(last)) = (curve.first(), curve.last()) else { return THICKEST };
    if s >= first.1 {
        // Towards the middle of its bearing a journal's eccentricity goes with the inverse of the number.
        return first.0 * first.1 / s;
    }
    if s <= last.1 {
        // Below the charts the film is made to fall to nothing with the number.
        return 1.0 - (1.0 - last.0) * s / last.1;
    }
    for pair in curve.windows(2) {
        if let [(e_1, s_1), (e_2, s_2)] = pair
            && s >= *s_2
        {
            return e_1 + (e_2 - e_1) * (s / s_1).ln() / (s_2 / s_1).ln();
        }
    }
    last.0
}

/// Eccentricity at a Sommerfeld number.
pub fn eccentricity(s: f64, ratio: f64) -> f64 {
    eccentricity_on(&curve(ratio).map(|node| (node.eccentricity, node.s)), s)
}

/// Eccentricity of an endless bearing at a Sommerfeld number.
pub fn endless_eccentricity(s: f64) -> f64 {
    eccentricity_on(&ENDLESS, s)
}

/// Sommerfeld number at an eccentricity: [`eccentricity`] turned round.
pub fn sommerfeld_number(eccentricity: f64, ratio: f64) -> f64 {
    let curve = curve(ratio);
    let (first, last) = (curve[0], curve[6]);
    if eccentricity <= first.eccentricity {
        return first.s * first.eccentricity / eccentricity;
    }
    if eccentricity >= last.eccentricity {
        return last.s * (1.0 - eccentricity) / (1.0 - last.eccentricity);
    }
    for pair in curve.windows(2) {
        if let [one, two] = pair
            && eccentricity <= two.eccentricity
        {
            let share = (eccentricity - one.eccentricity) / (two.eccentricity - one.eccentricity);
            return one.s * (two.s / one.s).powf(share);
        }
    }
    last.s
}

/// The friction variable (r/c)·f at a Sommerfeld number.
pub fn friction_variable(s: f64, ratio: f64) -> f64 {
    let curve = curve(ratio);
    let mut place = [curve[5], curve[6]];
    for pair in curve.windows(2) {
        if let [one, two] = pair
            && s >= two.s
        {
            place = [*one, *two];
            break;
        }
    }
    // Beyond either end the last two nodes' line goes on: towards light load it has Petroff's slope.
    let [one, two] = place;
    (one.f.ln() + (two.f / one.f).ln() * (s / one.s).ln() / (two.s / one.s).ln()).exp()
}

/// What `value` is at an eccentricity, from what it is in a bearing without load on.
fn along(eccentricity: f64, ratio: f64, unloaded: f64, value: impl Fn(&Node) -> f64) -> f64 {
    let (mut e_1, mut v_1) = (0.0, unloaded);
    for node in &curve(ratio) {
        if eccentricity <= node.eccentricity {
            return v_1 + (value(node) - v_1) * (eccentricity - e_1) / (node.eccentricity - e_1);
        }
        (e_1, v_1) = (node.eccentricity, value(node));
    }
    v_1
}

/// The flow variable Q/(r·c·N·L) at an eccentricity; π where the journal runs in the middle and only drags oil round.
pub fn flow_variable(eccentricity: f64, ratio: f64) -> f64 {
    along(eccentricity, ratio, PI, |node| node.flow)
}

/// The share of the flow that leaves sideways, at an eccentricity.
pub fn side_share(eccentricity: f64, ratio: f64) -> f64 {
    along(eccentricity, ratio, 0.0, |node| node.side)
}
