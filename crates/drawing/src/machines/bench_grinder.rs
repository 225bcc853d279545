use crate::shape::Shape::{Bearing, Block, Motor, Ribbed, Rounded};
use crate::sketch::Part::{Hidden, In, Outline};
use crate::sketch::Sketch;

pub(super) const SKETCH: Sketch = Sketch {
    template: "bench grinder",
    seen: "from the front",
    size: (260, 140),
    parts: &[
        In(Block, [70, 128, 120, 10]),
        Outline(&[(94, 128), (104, 92), (156, 92), (166, 128)]),
        In(Motor, [76, 26, 108, 68]),
        In(Block, [44, 56, 32, 8]),
        In(Block, [184, 56, 32, 8]),
        // The spindle and its bearings, cut.
        Hidden(&[(76, 56), (184, 56)]),
        Hidden(&[(76, 64), (184, 64)]),
        In(Bearing, [79, 46, 12, 28]),
        In(Bearing, [169, 46, 12, 28]),
        // The wheels in their guards, and the rests.
        In(Rounded, [24, 4, 34, 112]),
        In(Rounded, [202, 4, 34, 112]),
        In(Ribbed, [30, 14, 22, 92]),
        In(Ribbed, [208, 14, 22, 92]),
        In(Block, [18, 60, 46, 7]),
        In(Block, [196, 60, 46, 7]),
        Outline(&[(36, 67), (46, 67), (46, 82), (36, 82)]),
        Outline(&[(214, 67), (224, 67), (224, 82), (214, 82)]),
    ],
    spots: &[("spindle bearings", &[(85, 60), (175, 60)]), ("tool-rest pivots and clamps", &[(41, 75), (219, 75)])],
};
