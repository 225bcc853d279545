//! Every command loads all data, so loading must not be felt: under 8 ms in a release build.

#![cfg(not(debug_assertions))]

use std::time::{Duration, Instant};

use reference::{FILES, Reference};

#[test]
fn all_data_load_in_under_eight_milliseconds() {
    let once = || {
        let start = Instant::now();
        assert!(Reference::parse(FILES).is_ok());
        start.elapsed()
    };
    let best = (0..20).map(|_| once()).min().unwrap_or(Duration::MAX);
    println!("loading took {best:?}");
    assert!(best < Duration::from_millis(8), "{best:?}");
}
