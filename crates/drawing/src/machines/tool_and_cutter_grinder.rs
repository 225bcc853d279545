use crate::shape::Shape::{Bearing, Block, Handwheel, HandwheelSide, Motor, Ring, Rounded, Screw, Stand, Table};
use crate::sketch::Part::{In, Line, Outline};
use crate::sketch::Sketch;

pub(super) const SKETCH: Sketch = Sketch {
    template: "tool and cutter grinder",
    seen: "from the front",
    size: (280, 236),
    parts: &[
        In(Stand, [60, 184, 160, 50]),
        // The wheelhead on its column.
        In(Block, [150, 44, 30, 118]),
        In(HandwheelSide, [180, 100, 20, 30]),
        In(Screw, [161, 60, 8, 88]),
        In(Motor, [132, 10, 66, 34]),
        In(Bearing, [122, 18, 10, 18]),
        In(Bearing, [198, 18, 10, 18]),
        In(Block, [106, 24, 16, 6]),
        Outline(&[(96, 2), (106, 10), (106, 44), (96, 52)]),
        In(Block, [208, 24, 10, 6]),
        In(Rounded, [218, 4, 8, 46]),
        // The workhead with a cutter.
        In(Block, [44, 126, 34, 16]),
        In(Rounded, [38, 84, 46, 42]),
        In(Block, [84, 97, 12, 16]),
        Outline(&[(96, 100), (118, 100), (124, 105), (118, 110), (96, 110)]),
        In(Ring, [52, 96, 18, 18]),
        // The table and the cross slide.
        In(Table, [10, 142, 260, 13]),
        In(Block, [40, 155, 200, 10]),
        In(Block, [84, 165, 112, 19]),
        Line(&[(84, 171), (196, 171)]),
        In(Handwheel, [122, 162, 34, 34]),
    ],
    spots: &[
        ("table slide", &[(222, 151)]),
        ("cross slide", &[(188, 174)]),
        ("column", &[(176, 80)]),
        ("elevating and cross screws", &[(165, 130), (139, 179)]),
        ("spindle", &[(127, 27), (203, 27)]),
        ("workhead", &[(61, 105)]),
    ],
};
