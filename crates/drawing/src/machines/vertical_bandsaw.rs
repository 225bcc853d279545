use crate::shape::Shape::{Block, Handwheel, HandwheelBelow, Rack, Rounded, Screw, Stand, Wheel};
use crate::sketch::Part::{In, Line, Outline};
use crate::sketch::Sketch;

pub(super) const SKETCH: Sketch = Sketch {
    template: "vertical bandsaw",
    seen: "from the front, with the doors open",
    size: (180, 290),
    parts: &[
        In(Stand, [24, 248, 132, 40]),
        In(Block, [6, 104, 28, 70]),
        In(Rounded, [6, 14, 160, 92]),
        In(Rounded, [6, 166, 160, 84]),
        In(Wheel, [22, 22, 76, 76]),
        In(Wheel, [22, 170, 76, 76]),
        Line(&[(98, 60), (98, 208)]),
        Line(&[(22, 60), (22, 208)]),
        In(Screw, [56, 2, 8, 34]),
        In(HandwheelBelow, [46, 16, 28, -14]),
        // The guide post over the table.
        In(Block, [104, 66, 10, 58]),
        In(Rack, [114, 66, 6, 54]),
        In(Handwheel, [120, 82, 22, 22]),
        In(Block, [90, 122, 26, 14]),
        In(Block, [90, 168, 20, 10]),
        In(Block, [46, 152, 132, 9]),
        Outline(&[(76, 161), (144, 161), (130, 174), (90, 174)]),
    ],
    spots: &[
        ("wheel bearings", &[(60, 60), (60, 208)]),
        ("blade-guide bearings", &[(96, 130), (96, 174)]),
        ("guide post and rack", &[(116, 92)]),
        ("blade-tension screw", &[(60, 24)]),
        ("table trunnions", &[(124, 168)]),
    ],
};
