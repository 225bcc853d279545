//! Amounts as whole numbers, so that sums are exact in whatever order they are made.

use units::{Amount, Length, Mass, Quantity, Volume};

use crate::StoreError;

/// Which of the four ways an amount is measured, in the word of the file.
pub(crate) fn measure(amount: Amount) -> &'static str {
    match amount {
        Amount::Volume(_) => "volume",
        Amount::Mass(_) => "mass",
        Amount::Length(_) => "length",
        Amount::Pieces(_) => "pieces",
    }
}

/// How many whole numbers go to 1 m³, 1 kg, 1 m or one piece.
fn scale(measure: &str) -> f64 {
    match measure {
        "volume" => 1e12,
        "mass" => 1e9,
        "length" => 1e9,
        _ => 1e6,
    }
}

/// A million cubic metres, a million tonnes; and nine such sums do not overflow.
const MOST: f64 = 1e18;

/// The amount as a whole number of its measure.
#[expect(clippy::cast_possible_truncation, reason = "the number is below 1e18")]
pub(crate) fn to_whole(amount: Amount) -> Result<i64, StoreError> {
    let base = match amount {
        Amount::Volume(volume) => volume.base(),
        Amount::Mass(mass) => mass.base(),
        Amount::Length(length) => length.base(),
        Amount::Pieces(count) => count,
    };
    let whole = (base * scale(measure(amount))).round();
    if (0.0..=MOST).contains(&whole) { Ok(whole as i64) } else { Err(StoreError::TooMuch(amount.show_exact())) }
}

/// The amount a whole number of that measure stands for; nothing for one below zero.
#[expect(clippy::cast_precision_loss, reason = "beyond 2^53 the last digits are less than a drop in a tank")]
pub(crate) fn from_whole(measure: &str, whole: i64) -> Amount {
    let base = whole.max(0) as f64 / scale(measure);
    match measure {
        "volume" => Amount::Volume(Volume::from_base(base)),
        "mass" => Amount::Mass(Mass::from_base(base)),
        "length" => Amount::Length(Length::from_base(base)),
        _ => Amount::Pieces(base),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        /// A thousandth of a drop (0.05 mL, *common practice*) is 50 nL, and nothing anybody writes is finer.
        #[test]
        fn an_amount_is_kept_to_the_nanolitre(tenths in 0_u32..50_000, unit in prop::sample::select(vec!["mL", "L", "gal(US)"])) {
            let amount = Amount::parse(&format!("{}.{} {unit}", tenths / 10, tenths % 10)).unwrap();
            let back = from_whole(measure(amount), to_whole(amount).unwrap());
            let (Amount::Volume(amount), Amount::Volume(back)) = (amount, back) else { panic!("not a volume") };
            prop_assert!((amount.base() - back.base()).abs() <= 0.5e-12 + 1e-15 * amount.base());
        }
    }

    #[test]
    fn what_no_shop_has_is_refused() {
        let sea = Amount::parse("1e9 m3").unwrap();
        assert!(matches!(to_whole(sea), Err(StoreError::TooMuch(_))));
    }
}
