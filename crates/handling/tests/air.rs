//! The worst quarter of an hour, wherever it lies in the work or after it.

#![expect(clippy::unwrap_used, reason = "a test that cannot go on fails")]

use handling::air::{Room, Use, Way, emissions, exposure, near};
use proptest::prelude::*;
use reference::Reference;
use units::{Area, Frequency, Quantity, Temperature, Time, Volume};

fn room(changes: f64) -> Room {
    Room {
        volume: Volume::from_base(30.0),
        changes: Frequency::from_base(changes / 3600.0),
        temperature: Temperature::from_base(293.15),
        flames: false,
        attached_to_house: false,
    }
}

fn wiped(minutes: f64) -> Use {
    Use { amount: Volume::from_base(50e-6), way: Way::Wiped(Area::from_base(0.1)), lasts: Time::from_base(minutes * 60.0) }
}

/// One zone in steps of a second, and every quarter of an hour in it: what is breathed of acetone over 8 hours and in the worst of these.
fn stepped(minutes: f64, changes: f64) -> (f64, f64) {
    const STEP_H: f64 = 1.0 / 3600.0;
    let (used, room) = (wiped(minutes), room(changes));
    let reference = Reference::embedded();
    let leaves = emissions(reference.fluid("acetone").unwrap(), &used, &room, reference).unwrap();
    let emission = leaves.first().unwrap();
    let near = near(&mut formulas::Silent, emission.rate).unwrap();
    let loss = changes / formulas::room_air::HOME_MIXING;
    let (mut air, mut breathed) = (0.0, Vec::new());
    for step in 0..8 * 3600 {
        let works = f64::from(step) * STEP_H < emission.lasts;
        let rate = if works { emission.rate / room.volume.base() } else { 0.0 };
        breathed.push(air + if works { near } else { 0.0 });
        air += STEP_H * (rate - loss * air);
    }
    let mean = |all: &[f64]| all.iter().sum::<f64>() / f64::from(u32::try_from(all.len()).unwrap());
    (mean(&breathed), breathed.windows(900).step_by(10).map(mean).fold(0.0, f64::max))
}

#[test]
fn it_is_what_a_room_stepped_through_comes_to() {
    for (minutes, changes) in [(2.0, 0.5), (14.0, 0.25), (15.0, 0.25), (15.0, 0.01), (40.0, 2.0), (240.0, 5.0)] {
        let reference = Reference::embedded();
        let found = exposure(reference.fluid("acetone").unwrap(), &wiped(minutes), &room(changes), reference).unwrap().unwrap();
        let (mean, short) = stepped(minutes, changes);
        let held = found.held.first().unwrap();
        let near = |one: f64, other: f64| (one / other - 1.0).abs() < 3e-3;
        assert!(near(held.mean, mean) && near(held.short, short), "{minutes} min: {} {mean}, {} {short}", held.mean, held.short);
    }
}

proptest! {
    #[test]
    fn it_is_no_less_than_a_days_mean_nor_more_than_the_peak(minutes in 1.0_f64..480.0, changes in 0.01_f64..15.0) {
        let reference = Reference::embedded();
        let found = exposure(reference.fluid("acetone").unwrap(), &wiped(minutes), &room(changes), reference).unwrap().unwrap();
        for held in &found.held {
            prop_assert!(held.mean <= held.short * (1.0 + 1e-9) && held.short <= held.peak * (1.0 + 1e-9));
        }
    }
}
