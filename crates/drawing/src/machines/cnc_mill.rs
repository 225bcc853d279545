use crate::shape::Shape::{Bearing, Bellows, Block, Motor, Ring, Rounded, Screw};
use crate::sketch::Part::{In, Line, Outline};
use crate::sketch::Sketch;

pub(super) const SKETCH: Sketch = Sketch {
    template: "cnc mill",
    seen: "from the side, the table from its end",
    size: (220, 250),
    parts: &[
        Outline(&[(20, 248), (28, 214), (216, 214), (216, 248)]),
        Outline(&[(150, 214), (150, 30), (200, 30), (212, 214)]),
        In(Motor, [152, 2, 22, 28]),
        In(Block, [140, 36, 10, 170]),
        In(Screw, [158, 46, 9, 150]),
        In(Bearing, [155, 36, 15, 10]),
        In(Bellows, [140, 122, 10, 80]),
        // The head.
        In(Rounded, [58, 40, 82, 76]),
        In(Motor, [66, 4, 30, 36]),
        In(Block, [71, 54, 20, 76]),
        In(Bearing, [73, 66, 16, 10]),
        In(Bearing, [73, 114, 16, 10]),
        Outline(&[(72, 130), (90, 130), (86, 142), (76, 142)]),
        In(Block, [79, 142, 4, 16]),
        // The table, the saddle and the base's ways.
        In(Block, [44, 168, 80, 14]),
        Line(&[(60, 168), (60, 173), (66, 173), (66, 168)]),
        Line(&[(81, 168), (81, 173), (87, 173), (87, 168)]),
        Line(&[(102, 168), (102, 173), (108, 173), (108, 168)]),
        In(Block, [54, 182, 62, 9]),
        In(Block, [50, 191, 84, 12]),
        In(Ring, [80, 182, 9, 9]),
        In(Block, [36, 203, 114, 11]),
        In(Screw, [48, 206, 96, 6]),
        In(Bearing, [36, 204, 12, 10]),
        In(Motor, [36, 201, -26, 16]),
    ],
    spots: &[
        ("table and saddle ways", &[(60, 186), (126, 203)]),
        ("column ways", &[(145, 62)]),
        ("ball screws", &[(84, 186), (104, 209), (162, 100)]),
        ("ball-screw bearings", &[(162, 41), (42, 209)]),
        ("spindle bearings", &[(81, 71), (81, 119)]),
        ("drawbar and taper", &[(81, 134)]),
    ],
};
