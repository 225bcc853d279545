//! Kinds of lubrication points: one file each, one line here.

mod common;
mod interval;
mod maker;
mod rubbing;
mod steam;

use formulas::working::{Notebook, Silent};
use reference::Reference;
use shop::{Kind, Machine, Point, Shop};

use crate::need::Need;
use crate::needs::{Complaint, Working};
pub(crate) use common::{Asking, Spot};

/// A kind of point: what can be said about it, and how its need is worked out with and without keeping the working.
struct PointKind {
    kind: &'static Kind,
    ask: fn(&Spot<'_>, &mut Silent) -> Result<Asking, Complaint>,
    explain: fn(&Spot<'_>, &mut Notebook) -> Result<Asking, Complaint>,
}

macro_rules! point_kinds {
    ($($module:ident),* $(,)?) => {
        $(mod $module;)*

        const ALL: &[PointKind] = &[$(PointKind { kind: &$module::KIND, ask: $module::ask::<Silent>, explain: $module::ask::<Notebook> }),*];
        const KINDS: &[&Kind] = &[$(&$module::KIND),*];
    };
}

point_kinds! {
    horizontal_way,
    vertical_way,
    lined_way,
    grinder_slide,
    drawer_slide,
    leadscrew,
    half_nuts,
    ball_screw,
    vice_screw,
    plain_bearing,
    bush,
    rolling_bearing,
    fast_spindle,
    gear_head,
    change_gears,
    quick_change_gearbox,
    rack_and_pinion,
    scroll_chuck,
    dead_centre,
    quill,
    index_plate,
    oil_point,
    wick,
    grease_nipple,
    roller_chain,
    air_tool,
    steam_cylinder,
    slide_valve,
    steady_fingers,
    steam_motion,
    compressor_crankcase,
    lock,
    instrument_pivot,
}

/// All kinds of points.
pub(super) fn kinds() -> &'static [&'static Kind] {
    KINDS
}

/// The need of one point.
pub(super) fn need(shop: &Shop, machine: &Machine, point: &Point, reference: &Reference, working: Working) -> Result<Need, Complaint> {
    let spot = Spot { room: &shop.room, machine, point, reference, units: shop.units };
    let kind = ALL
        .iter()
        .find(|kind| std::ptr::eq(kind.kind, point.kind) || kind.kind.name == point.kind.name)
        .unwrap_or_else(|| unreachable!("the reader takes only kinds from this list"));
    match working {
        Working::Dropped => Ok(common::finish(&spot, (kind.ask)(&spot, &mut Silent)?, None)),
        Working::Kept => {
            let mut notebook = Notebook::default();
            let asking = (kind.explain)(&spot, &mut notebook)?;
            Ok(common::finish(&spot, asking, Some(notebook)))
        }
    }
}
