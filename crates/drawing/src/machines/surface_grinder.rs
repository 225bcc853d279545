use crate::shape::Shape::{Bellows, Block, Handwheel, HandwheelBelow, Rack, Ring, Screw, Stand, Table};
use crate::sketch::Part::{Hidden, In, Line, Outline};
use crate::sketch::Sketch;

pub(super) const SKETCH: Sketch = Sketch {
    template: "surface grinder",
    seen: "from the front",
    size: (300, 262),
    parts: &[
        In(Stand, [70, 206, 160, 54]),
        Outline(&[(104, 150), (108, 40), (192, 40), (196, 150)]),
        In(Block, [110, 50, 8, 90]),
        In(Block, [182, 50, 8, 90]),
        In(HandwheelBelow, [130, 40, 40, -30]),
        In(Screw, [146, 40, 8, 34]),
        // The wheel in its guard.
        Outline(&[(112, 112), (112, 82), (128, 66), (172, 66), (188, 82), (188, 112)]),
        In(Ring, [120, 74, 60, 60]),
        In(Ring, [138, 92, 24, 24]),
        In(Ring, [146, 100, 8, 8]),
        // The work and the table.
        In(Block, [96, 136, 108, 12]),
        In(Table, [20, 148, 260, 16]),
        In(Rack, [50, 164, 200, 6]),
        In(Bellows, [62, 170, 176, 9]),
        In(Block, [84, 179, 132, 27]),
        Hidden(&[(84, 188), (216, 188)]),
        In(Handwheel, [86, 172, 38, 38]),
        In(Handwheel, [164, 182, 30, 30]),
        Line(&[(20, 148), (20, 140), (30, 140), (30, 148)]),
        Line(&[(270, 148), (270, 140), (280, 140), (280, 148)]),
    ],
    spots: &[
        ("table ways", &[(232, 174)]),
        ("saddle ways", &[(146, 188)]),
        ("column ways", &[(186, 58)]),
        ("down-feed screw", &[(150, 52)]),
        ("cross-feed screw", &[(179, 185)]),
        ("table rack and pinion", &[(70, 167)]),
        ("spindle", &[(150, 104)]),
        ("handwheel shafts", &[(105, 191), (179, 198), (150, 36)]),
    ],
};
