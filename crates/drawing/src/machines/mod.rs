//! The sketches, one file a template. The places are our own, drawn as such a machine stands before one; no drawing was copied.

use crate::sketch::Sketch;

macro_rules! sketches {
    ($($machine:ident),+ $(,)?) => {
        $(mod $machine;)+
        const SKETCHES: &[&Sketch] = &[$(&$machine::SKETCH),+];
    };
}

mod lathe;

sketches![
    air_compressor,
    air_tools,
    arbor_press,
    bench_grinder,
    bench_lathe,
    bench_mill,
    bench_vice,
    centre_lathe,
    cnc_mill,
    dividing_head,
    drill_press,
    horizontal_bandsaw,
    knee_mill,
    measuring_tools,
    model_steam_engine,
    plain_bearing_lathe,
    rotary_table,
    shaper,
    shop_furniture,
    surface_grinder,
    tool_and_cutter_grinder,
    vertical_bandsaw,
    watchmaker_lathe,
];

/// The sketch of a template.
pub(crate) fn sketch(template: &str) -> Option<&'static Sketch> {
    SKETCHES.iter().find(|sketch| sketch.template == template).copied()
}
