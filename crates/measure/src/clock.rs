//! Time taken. Whatever else runs on a machine only makes a run longer, so the shortest of several is the one to believe.

use std::time::{Duration, Instant};

/// After so long no more runs are begun, once there were so many.
const ENOUGH: (Duration, u32) = (Duration::from_secs(3), 3);

/// The shortest of at most `most` runs, in seconds, and what the last one gave.
pub(crate) fn shortest<T>(most: u32, mut work: impl FnMut() -> T) -> (f64, T) {
    let (mut shortest, all) = (Duration::MAX, Instant::now());
    let mut run = 0;
    loop {
        let begun = Instant::now();
        let answer = work();
        shortest = shortest.min(begun.elapsed());
        run += 1;
        if run >= most || (run >= ENOUGH.1 && all.elapsed() > ENOUGH.0) {
            return (shortest.as_secs_f64(), answer);
        }
    }
}

/// A number of things, to reckon with.
pub(crate) fn count(things: usize) -> f64 {
    u32::try_from(things).map_or(f64::INFINITY, f64::from)
}
