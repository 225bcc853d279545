use crate::shape::Shape::{Block, Motor, Ribbed, Rounded, Tank, Wheel};
use crate::sketch::Part::{In, Line, Outline};
use crate::sketch::Sketch;

pub(super) const SKETCH: Sketch = Sketch {
    template: "air compressor",
    seen: "from the side",
    size: (270, 190),
    parts: &[
        In(Tank, [40, 100, 200, 66]),
        Line(&[(72, 100), (72, 166)]),
        Line(&[(208, 100), (208, 166)]),
        In(Block, [66, 92, 146, 8]),
        // The pump: crankcase, finned cylinder, head.
        Outline(&[(78, 92), (82, 58), (126, 58), (130, 92)]),
        In(Ribbed, [86, 20, 36, 38]),
        In(Block, [82, 10, 44, 10]),
        Line(&[(126, 14), (140, 14), (140, 100)]),
        In(Motor, [152, 52, 58, 40]),
        // The wheels, the foot and the handle.
        In(Wheel, [40, 146, 42, 42]),
        Outline(&[(200, 166), (216, 166), (212, 188), (204, 188)]),
        Line(&[(236, 116), (262, 84)]),
        In(Rounded, [254, 76, 14, 12]),
    ],
    spots: &[("crankcase", &[(104, 76)]), ("motor bearings", &[(157, 72), (205, 72)]), ("wheels and handle", &[(61, 167), (261, 82)])],
};
