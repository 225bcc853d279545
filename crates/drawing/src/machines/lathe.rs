//! What lathes share. Each group's own origin lies on the top of the bed; the spindle's axis is 34 above it.

use crate::shape::Shape::{Block, Carriage, Chuck, Handwheel, HandwheelSide, Lever, Rack, Ribbed, Rounded, Screw, Tailstock, TopSlide};
use crate::sketch::Part::{self, In, Outline};

/// The bed with its rack, and the leadscrew between its bearings. The origin is the left end.
pub(super) const BED: &[Part] = &[
    In(Block, [0, 0, 262, 24]),
    Part::Line(&[(0, 5), (262, 5)]),
    In(Rack, [80, 8, 174, 4]),
    In(Screw, [10, 14, 244, 6]),
    In(Block, [4, 12, 8, 10]),
    In(Block, [250, 12, 8, 10]),
];

/// The change gears in their open guard, the spindle's on top. The origin is the left of the headstock.
pub(super) const CHANGE_GEARS: &[Part] = &[
    In(Rounded, [-36, -56, 36, 98]),
    In(Ribbed, [-26, -46, 9, 24]),
    In(Ribbed, [-26, -22, 9, 22]),
    In(Ribbed, [-26, 0, 9, 34]),
    In(Block, [-17, -36, 17, 4]),
    In(Block, [-17, -13, 17, 4]),
    In(Block, [-17, 15, 17, 4]),
];

/// The chuck. The origin is its back.
pub(super) const CHUCK: &[Part] = &[In(Block, [-6, -43, 6, 18]), In(Chuck, [0, -58, 26, 48])];

/// The carriage with its slides. The origin is its left end.
pub(super) const CARRIAGE: &[Part] = &[
    In(Carriage, [0, -10, 66, 52]),
    In(Handwheel, [10, 15, 23, 23]),
    In(Lever, [46, 20, 8, 12]),
    In(Block, [12, -20, 40, 10]),
    In(TopSlide, [10, -46, 54, 26]),
    In(Handwheel, [35, -14, 19, 19]),
];

/// The tailstock with its centre. The origin is the left of its body.
pub(super) const TAILSTOCK: &[Part] = &[
    In(Block, [-14, -39, 14, 10]),
    Outline(&[(-14, -39), (-24, -34), (-14, -29)]),
    In(Tailstock, [0, -46, 46, 46]),
    In(HandwheelSide, [46, -47, 16, 26]),
];
