//! Oil fed by the drop, the wick, the can or the air, and whether it comes at all when it is cold.

mod cold;
mod drip;

use units::{AngularVelocity, Length, VolumeRate};
use uom::si::angular_velocity::revolution_per_minute as rpm;
use uom::si::length::inch;
use uom::si::length::millimeter;
use uom::si::volume_rate::cubic_centimeter_per_second;

use crate::sources;
use crate::working::{Caution, Recorder};
use crate::{given, step};

pub use cold::{ABOVE_POUR_K, ColdLimit, ColdestStart, GradeChoice, HotAndCold, coldest_start, grade_for, warm_up_time};
pub use drip::{Wick, ball_oiler_strokes, drops_of, wick_feed};

/// Least feed of cylinder oil, drops a minute: d·s·n/13 800, with bore and stroke in inches; one drop for each 600 square feet swept.
///
/// # Range
/// A floor. Small model engines are given about ten times as much (1 to 50 times).
///
/// # Source
/// A compressor text's rule.
///
/// # Example
/// One inch by one inch at 300 rev/min: 1.30 drops an hour (computed independently from the rule).
/// ```
/// use formulas::{Silent, feed::cylinder_feed};
/// use uom::si::{angular_velocity::revolution_per_minute, f64::{AngularVelocity, Length}, length::inch};
/// let an_inch = Length::new::<inch>(1.0);
/// let feed = cylinder_feed(&mut Silent, an_inch, an_inch, AngularVelocity::new::<revolution_per_minute>(300.0));
/// assert!((feed * 60.0 - 1.30).abs() < 0.013);
/// ```
pub fn cylinder_feed<R: Recorder>(r: &mut R, bore: Length, stroke: Length, speed: AngularVelocity) -> f64 {
    given!(r, d[inch] = bore, "bore");
    given!(r, s[inch] = stroke, "stroke");
    given!(r, n["rev/min"] = speed.get::<rpm>(), "speed");
    step!(r, i["drops/min"] = d * s * n / 13800.0, sources::CYLINDER_FEED);
    r.caution(Caution::Disputed {
        what: "the feed of cylinder oil",
        why: "this is a floor, and owners of small engines give up to fifty times as much",
    });
    i
}

/// Oil for a spindle fed by air: 0.0116 mL an hour for each mm of bore of its bearings (0.01 fl oz for each inch).
///
/// # Source
/// A trade sheet's dose.
///
/// # Example
/// Four bearings of 0.9843 in take 0.0394 US fl oz an hour, 1.165 mL (the sheet's own example).
/// ```
/// use formulas::{Silent, feed::air_spindle_feed};
/// use uom::si::{f64::Length, length::inch, volume_rate::cubic_centimeter_per_second};
/// let feed = air_spindle_feed(&mut Silent, Length::new::<inch>(0.9843), 4.0);
/// assert!((feed.get::<cubic_centimeter_per_second>() * 3600.0 / 29.5735 - 0.0394).abs() < 0.0004);
/// ```
pub fn air_spindle_feed<R: Recorder>(r: &mut R, bore: Length, bearings: f64) -> VolumeRate {
    given!(r, d[millimeter] = bore, "bore of a bearing");
    given!(r, i [] = bearings, "number of bearings");
    step!(r, q["mL/h"] = 29.5735 * 0.01 / 25.4 * d * i, sources::LUBRICANT_DOSE);
    VolumeRate::new::<cubic_centimeter_per_second>(q / 3600.0)
}
