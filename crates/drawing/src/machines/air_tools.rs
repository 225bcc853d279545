use crate::shape::Shape::{Block, Gear, Ribbed, Ring, Rounded};
use crate::sketch::Part::{In, Line, Outline};
use crate::sketch::Sketch;

pub(super) const SKETCH: Sketch = Sketch {
    template: "air tools",
    seen: "from the side: a drill, a ratchet and a die grinder",
    size: (300, 190),
    parts: &[
        // The drill.
        In(Rounded, [50, 10, 84, 34]),
        Outline(&[(100, 44), (128, 44), (136, 92), (112, 92)]),
        In(Block, [30, 16, 20, 22]),
        Outline(&[(30, 18), (16, 24), (16, 30), (30, 36)]),
        Line(&[(16, 27), (2, 27)]),
        In(Block, [118, 92, 12, 10]),
        Line(&[(96, 46), (92, 58), (104, 60)]),
        // The ratchet.
        In(Rounded, [196, 30, 80, 22]),
        Outline(&[(196, 34), (176, 28), (176, 54), (196, 48)]),
        In(Ring, [152, 26, 30, 30]),
        In(Gear, [158, 32, 18, 18]),
        In(Block, [276, 36, 12, 10]),
        // The die grinder.
        In(Rounded, [100, 134, 110, 28]),
        In(Block, [76, 140, 24, 16]),
        In(Block, [52, 146, 24, 4]),
        In(Ribbed, [36, 138, 16, 20]),
        In(Block, [210, 143, 12, 10]),
        Line(&[(140, 134), (150, 122), (204, 128)]),
    ],
    spots: &[
        ("vane motors", &[(104, 27), (240, 41), (160, 148)]),
        ("ratchet and gear heads", &[(167, 41), (66, 27)]),
        ("hose couplings", &[(124, 97), (282, 41), (216, 148)]),
    ],
};
