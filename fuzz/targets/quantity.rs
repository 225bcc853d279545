//! What is written is read, or refused; what was read is printed, and read again as the same.
#![no_main]

use libfuzzer_sys::fuzz_target;
use units::text::Written;
use units::{Amount, Digits, Quantity, QuantityError, Range, System, parse, parse_range, show, show_in, show_range};

macro_rules! checks {
    ($($kind:ident)+) => { [$(check::<units::$kind>),+, amount] };
}

/// One for each kind; the first byte chooses.
const CHECKS: [fn(&str); 21] = checks!(Length Area Volume Mass MassDensity Temperature TemperatureDifference Velocity AngularVelocity
    Frequency Time Force Torque Pressure Power KinematicViscosity DynamicViscosity Ratio VolumeRate Usage);

fuzz_target!(|bytes: &[u8]| {
    let Some((first, rest)) = bytes.split_first() else { return };
    if let Ok(text) = std::str::from_utf8(rest) {
        CHECKS[usize::from(*first) % CHECKS.len()](text);
    }
});

fn amount(text: &str) {
    if let Ok(amount) = Amount::parse(text) {
        assert_eq!(Amount::read(&amount.write()), Ok(amount));
        let _ = amount.show(System::Both);
    }
}

fn check<Q: Quantity>(text: &str) {
    if let Ok(range) = parse_range::<Q>(text) {
        assert_eq!(Range::<Q>::read(&range.write()), Ok(range));
        let _ = show_range(range, System::Both);
    }
    let Ok(read) = parse::<Q>(text) else { return };
    assert!(read.base().is_finite());
    let exactly = Q::read(&read.write()).map(|again| again.base().to_bits());
    assert_eq!(exactly, Ok(read.base().to_bits()), "{}", read.write());
    for system in [System::Metric, System::Inch] {
        printed(read, &show(read, system));
    }
    for unit in Q::units() {
        assert!(show_in(read, unit.symbol).is_some());
    }
}

/// What is printed with few digits is read again within them, but for what rounding carries over a limit.
fn printed<Q: Quantity>(read: Q, text: &str) {
    // Half of the third digit, or of a tenth of a degree. A float below the smallest of full precision loses digits on the way.
    let most = match Q::units()[0].digits {
        Digits::Significant(_) => 0.0051 * read.base().abs() + 1e-300,
        Digits::Decimals(_) => 0.051 + 1e-12 * read.base().abs(),
    };
    match parse::<Q>(text) {
        Ok(again) => assert!((again.base() - read.base()).abs() <= most, "{read:?} is printed {text} and read as {again:?}"),
        Err(QuantityError::NotFinite { .. } | QuantityError::Outside { .. }) => {}
        Err(error) => panic!("{read:?} is printed {text}: {error}"),
    }
}
