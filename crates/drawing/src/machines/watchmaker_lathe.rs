use crate::shape::Shape::{Block, Handwheel, HandwheelSide, Rounded, Wheel};
use crate::sketch::Part::{In, Line, Outline};
use crate::sketch::Sketch;

pub(super) const SKETCH: Sketch = Sketch {
    template: "watchmaker lathe",
    seen: "from the front, with the countershaft drawn above it",
    size: (280, 166),
    parts: &[
        In(Rounded, [70, 154, 110, 10]),
        Outline(&[(106, 128), (144, 128), (156, 154), (94, 154)]),
        In(Rounded, [14, 114, 256, 14]),
        // The countershaft, the idler and the belts.
        In(Wheel, [48, 0, 36, 36]),
        In(Wheel, [12, 36, 22, 22]),
        Line(&[(34, 47), (66, 76)]),
        Line(&[(84, 18), (84, 76)]),
        Line(&[(16, 38), (50, 10)]),
        In(Block, [30, 72, 90, 20]),
        Outline(&[(40, 114), (40, 62), (56, 62), (56, 98), (96, 98), (96, 62), (112, 62), (112, 114)]),
        Outline(&[(40, 70), (46, 74), (46, 88), (40, 92)]),
        Outline(&[(112, 70), (106, 74), (106, 88), (112, 92)]),
        In(Block, [60, 66, 11, 32]),
        In(Block, [71, 70, 11, 24]),
        In(Block, [82, 74, 10, 16]),
        In(Rounded, [18, 72, 12, 20]),
        Outline(&[(120, 74), (130, 78), (130, 86), (120, 90)]),
        // The slide rest.
        In(Block, [144, 104, 40, 10]),
        In(Block, [150, 95, 28, 9]),
        In(Block, [144, 86, 42, 9]),
        In(Block, [156, 70, 12, 16]),
        In(Block, [140, 78, 28, 5]),
        In(HandwheelSide, [186, 82, 12, 17]),
        In(Handwheel, [147, 97, 18, 18]),
        // The tailstock.
        Outline(&[(214, 114), (218, 66), (248, 66), (252, 114)]),
        In(Block, [200, 77, 18, 10]),
        Outline(&[(200, 77), (190, 82), (200, 87)]),
        In(Block, [248, 77, 10, 10]),
        In(Rounded, [258, 70, 10, 24]),
    ],
    spots: &[
        ("headstock cone bearings", &[(44, 81), (108, 81)]),
        ("bed", &[(206, 118)]),
        ("slide-rest slides", &[(148, 90), (180, 109)]),
        ("slide-rest screws", &[(183, 90), (156, 106)]),
        ("tailstock spindle", &[(209, 82)]),
        ("idler and countershaft", &[(23, 47), (66, 18)]),
    ],
};
