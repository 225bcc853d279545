//! Where the numbers stand: on a ring of seats round the sketch, so that the leaders together are as short as can be.
//!
//! Two leaders that cross are longer than the same two swapped, so that among the shortest none cross.

/// Radius of the circle round a number.
pub(crate) const RADIUS: f64 = 11.0;
/// From one number to the next at least.
pub(crate) const PITCH: f64 = 24.0;
/// From the edge of the sketch to the middle of a number.
const AWAY: f64 = 19.0;
/// How near to a foreign spot a leader may pass, and what passing nearer costs.
const CLEAR: f64 = 5.0;
const TOO_NEAR: f64 = 30.0;
/// A leader that leaves flatter than this, as breadth over depth, would run through the number beside it.
const FLATTEST: f64 = 1.7;
const TOO_FLAT: f64 = 90.0;

type Place = (f64, f64);

/// A seat for a number.
#[derive(Clone, Copy)]
struct Seat {
    at: Place,
    /// Whether the sketch is above or beneath it rather than beside it.
    level: bool,
}

/// Finds a seat for each spot; none where the ring is full.
pub(crate) fn seats(spots: &[Place], width: f64, height: f64) -> Vec<Option<Place>> {
    let ring = ring(width, height);
    let costs: Vec<Vec<f64>> = (0..spots.len()).map(|spot| ring.iter().map(|seat| cost(spots, spot, *seat)).collect()).collect();
    let mut taken = vec![None; ring.len()];
    for spot in 0..spots.len() {
        seat_one(spot, &costs, &mut taken);
    }
    (0..spots.len()).map(|spot| taken.iter().position(|by| *by == Some(spot)).map(|seat| ring[seat].at)).collect()
}

/// Gives a seat to one spot more, and moves the others wherever that makes all leaders together shortest.
///
/// Each seat is reached straight or by sending on the spot that has another one; the free seat reached most cheaply is filled.
fn seat_one(spot: usize, costs: &[Vec<f64>], taken: &mut [Option<usize>]) {
    let mut reached = costs[spot].clone();
    let mut by_way_of = vec![None; taken.len()];
    // A way touches no seat twice, so that as many rounds as there are seats find all.
    for _ in 0..taken.len() {
        for (from, sent_on) in taken.iter().enumerate().filter_map(|(seat, by)| Some((seat, (*by)?))) {
            for to in 0..taken.len() {
                let way = reached[from] + costs[sent_on][to] - costs[sent_on][from];
                if way < reached[to] - 1e-9 {
                    reached[to] = way;
                    by_way_of[to] = Some(from);
                }
            }
        }
    }
    let free = (0..taken.len()).filter(|seat| taken[*seat].is_none());
    let Some(mut seat) = free.min_by(|a, b| reached[*a].total_cmp(&reached[*b])) else { return };
    while let Some(from) = by_way_of[seat] {
        taken[seat] = taken[from];
        seat = from;
    }
    taken[seat] = Some(spot);
}

/// The seats, row by row: above, beneath, left, right.
fn ring(width: f64, height: f64) -> Vec<Seat> {
    let across = even(-AWAY, width + AWAY);
    let down = even(-AWAY, height + AWAY);
    let rows = [-AWAY, height + AWAY];
    let columns = [-AWAY, width + AWAY];
    let level = rows.iter().flat_map(|y| across.iter().map(|x| Seat { at: (*x, *y), level: true }));
    // The corners are the rows' already.
    let inner = down.get(1..down.len().saturating_sub(1)).unwrap_or_default();
    let beside = columns.iter().flat_map(|x| inner.iter().map(|y| Seat { at: (*x, *y), level: false }));
    level.chain(beside).collect()
}

/// As many even steps from one end to the other as leave room for the numbers.
fn even(from: f64, to: f64) -> Vec<f64> {
    let steps = (1..u8::MAX).take_while(|steps| (to - from) / f64::from(*steps) >= PITCH).last().unwrap_or(1);
    (0..=steps).map(|step| from + (to - from) * f64::from(step) / f64::from(steps)).collect()
}

/// The length of the leader from a seat to a spot, and something more where it would mislead.
fn cost(spots: &[Place], spot: usize, seat: Seat) -> f64 {
    let to = spots[spot];
    let (across, down) = ((to.0 - seat.at.0).abs(), (to.1 - seat.at.1).abs());
    let flat = if seat.level { across > FLATTEST * down } else { down > FLATTEST * across };
    let foreign = spots.iter().enumerate().filter(|(other, _)| *other != spot);
    let near = foreign.filter(|(_, other)| distance(**other, seat.at, to) < CLEAR).fold(0.0, |sum, _| sum + TOO_NEAR);
    across.hypot(down) + near + if flat { TOO_FLAT } else { 0.0 }
}

/// From a place to the nearest of a line's.
fn distance(place: Place, from: Place, to: Place) -> f64 {
    let along = (to.0 - from.0, to.1 - from.1);
    let square = along.0.powi(2) + along.1.powi(2);
    let share = ((place.0 - from.0) * along.0 + (place.1 - from.1) * along.1) / square;
    let share = share.clamp(0.0, 1.0);
    (place.0 - from.0 - share * along.0).hypot(place.1 - from.1 - share * along.1)
}
