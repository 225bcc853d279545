//! A bore and a shaft that were made, and no longer are what was wanted: the ways out, ranked.
//!
//! A way is chosen only if the gap suits it with a chance of 95 %; otherwise the answer is the measurement that would decide.

#![expect(non_snake_case, reason = "symbols match the source")]

mod ways;

use units::{Force, Length, Range, Temperature};
use uom::si::length::{micrometer, millimeter};

use crate::FormulaError;
use crate::bond::{BondMetal, Heat, Loading, heat_to_undo};
use crate::error::{not_negative, within};
use crate::fit::{Feature, Instrument, Measured, MeasuredGap, Phi, measured_gap};
use crate::interference::{Adhesion, Holding, Joint};
use crate::sources;
use crate::working::{Caution, Recorder};
use crate::{given, step};

/// The chance with which a gap has to suit a way for it to be chosen.
pub const CHANCE_WANTED: f64 = 0.95;

/// Everything that decides how a blown fit is mended.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Blown {
    /// The bore as measured.
    pub bore: Measured,
    /// The shaft as measured.
    pub shaft: Measured,
    /// The joint; its diameter is the nominal one.
    pub joint: Joint,
    /// Adhesion of the dry press.
    pub adhesion: Adhesion,
    /// The metals as a bond sees them: hub, shaft.
    pub bond_metals: [BondMetal; 2],
    /// Mean roughness Ra of hub and shaft.
    pub roughness: [Length; 2],
    /// What it has to hold.
    pub load: Holding,
    /// How it is loaded.
    pub loading: Loading,
    /// Factor of safety.
    pub safety: f64,
    /// Hottest it gets in service.
    pub service: Temperature,
    /// The run-out that can be borne.
    pub run_out: Length,
    /// Whether the joint has to come apart again without heat.
    pub removable: bool,
}

/// A way out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Method {
    /// Press it as it is.
    Press,
    /// Press or push it with a high-strength compound.
    PressAndBond,
    /// A thin compound in a close gap.
    LowViscosity,
    /// An ordinary compound in a slip fit.
    General,
    /// A paste with activator in a wide gap.
    GapFilling,
    /// A bonded sleeve of at least 1.5 mm wall, metal built up and machined again, or a new part.
    Remake,
}

/// How a way is undone.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Undo {
    /// Pressed out cold.
    PressOut,
    /// Heated so far, and pulled hot.
    Heat(Temperature),
    /// Machined away.
    Machine,
}

/// A way out, judged.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Way {
    /// The way.
    pub method: Method,
    /// The gaps it suits, negative for interference.
    pub window: (Length, Length),
    /// The chance that the true gap is one of them.
    pub suits: f64,
    /// Force at the face it holds: low with the factor of safety, likely, high. `None` where the likeliest gap lies outside what can be worked.
    pub strength: Option<Range<Force>>,
    /// Whether the low strength carries the load; of a press, whether any interference within its window does.
    pub carries: bool,
    /// The run-out it may leave.
    pub run_out: Length,
    /// Whether that can be borne.
    pub runs_true: bool,
    /// How it is undone.
    pub undo: Undo,
    /// Whether it comes apart as it has to.
    pub comes_apart: bool,
}

impl Way {
    /// Whether nothing but the measurement speaks against it.
    #[must_use]
    pub const fn sound(&self) -> bool {
        self.carries && self.runs_true && self.comes_apart
    }
}

/// What to do.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Decision {
    /// Take this way.
    Take(Method),
    /// Measure this part again with this instrument, until the gap is known to this standard uncertainty.
    Measure {
        /// The part known worse.
        part: Feature,
        /// What to measure it with.
        by: Instrument,
        /// The uncertainty of the gap that would decide; it may be finer than the instrument gives, and then a smaller spread must help.
        until: Length,
        /// The way that would then be taken.
        towards: Method,
    },
}

/// The ways out of a blown fit, the best first, and what to do.
#[derive(Debug, Clone, PartialEq)]
pub struct Rescue {
    /// The gap as measured.
    pub gap: MeasuredGap,
    /// Force at the face that has to be held, without the factor of safety.
    pub needed: Force,
    /// Every way, the best first.
    pub ways: Vec<Way>,
    /// What to do.
    pub decision: Decision,
}

/// One-sided 95 % point of the normal distribution.
const ONE_SIDED: f64 = 1.645;

/// Ranks the ways out of a blown fit.
///
/// | way | gap on the diameter, mm |
/// | --- | --- |
/// | press | interference that holds the load, with the hub still elastic |
/// | press or push with a compound | −0.02 to 0.02 |
/// | thin compound | 0 to 0.10, at its best to 0.05 |
/// | ordinary compound | 0.02 to 0.15, at its best from 0.05 |
/// | paste with activator | 0.05 to 0.25, at its best from 0.15 |
/// | sleeve, build up or remake | any |
///
/// # Errors
/// As [`contact_pressure`](crate::interference::contact_pressure) and [`bond_strength`](crate::bond::bond_strength);
/// [`FormulaError::OutOfRange`] for a negative run-out or a load of nothing.
///
/// # Source
/// The windows and their order are *common practice*; the strengths are those of [`interference`](crate::interference) and
/// [`bond`](crate::bond); the uncertainty is that of JCGM 100.
pub fn rescue<R: Recorder>(r: &mut R, blown: &Blown) -> Result<Rescue, FormulaError> {
    crate::interference::checked(&blown.joint)?;
    not_negative("the run-out that can be borne", blown.run_out.get::<millimeter>(), "mm", sources::DEFINITION)?;
    within("the factor of safety", blown.safety, "", (1.0, f64::INFINITY), sources::COMMON_PRACTICE)?;
    let gap = measured_gap(r, &blown.bore, &blown.shaft)?;
    let needed = ways::needed(r, blown)?;
    let mut ways = Vec::with_capacity(6);
    for plan in ways::plans(r, blown, &gap)? {
        ways.push(judge(r, blown, &gap, &plan));
    }
    let c = gap.gap.get::<millimeter>();
    // Sound ways that suit come first; among them the one made for this gap; then whatever suits best.
    let key = |way: &Way| (!(way.sound() && way.suits >= CHANCE_WANTED), !way.sound(), ways::off_best(way.method, c, way.window));
    ways.sort_by(|a, b| {
        let ((a_bad, a_unsound, a_off), (b_bad, b_unsound, b_off)) = (key(a), key(b));
        a_bad.cmp(&b_bad).then(a_unsound.cmp(&b_unsound)).then(a_off.total_cmp(&b_off)).then(a.method.cmp(&b.method))
    });
    let decision = decide(&gap, blown, &ways);
    if !gap.decides {
        r.caution(Caution::Provided { that: "you measure with a micrometer and a bore gauge first: a calliper alone cannot decide" });
    }
    Ok(Rescue { gap, needed, ways, decision })
}

fn judge<R: Recorder>(r: &mut R, blown: &Blown, gap: &MeasuredGap, plan: &ways::Plan) -> Way {
    let (low, high) = plan.window;
    given!(r, c[micrometer] = gap.gap, "measured gap");
    given!(r, u_c[micrometer] = gap.uncertainty, "uncertainty of the gap");
    given!(r, c_1["µm"] = low.get::<micrometer>(), "narrowest gap the way suits");
    given!(r, c_2["µm"] = high.get::<micrometer>(), "widest gap the way suits");
    step!(r, P [] = if c_2 > c_1 { Phi((c_2 - c) / u_c) - Phi((c_1 - c) / u_c) } else { 0.0 }, sources::UNCERTAINTY);
    let bonded = matches!(plan.method, Method::LowViscosity | Method::General | Method::GapFilling);
    // A bonded part can lie to one side of its gap; a press or a remade part cannot.
    let run_out =
        if bonded { (gap.gap + 2.0 * gap.uncertainty).max(Length::new::<millimeter>(0.0)) } else { Length::new::<millimeter>(0.0) };
    let undo = match plan.method {
        Method::Press => Undo::PressOut,
        Method::Remake => Undo::Machine,
        _ => Undo::Heat(heat_to_undo(Heat::Standard)),
    };
    Way {
        method: plan.method,
        window: plan.window,
        suits: P,
        strength: plan.strength,
        carries: plan.carries,
        run_out,
        runs_true: run_out <= blown.run_out || !bonded,
        undo,
        comes_apart: !blown.removable || matches!(undo, Undo::PressOut) || plan.method == Method::Remake,
    }
}

fn decide(gap: &MeasuredGap, blown: &Blown, ways: &[Way]) -> Decision {
    let ready = ways.iter().find(|way| way.sound() && way.suits >= CHANCE_WANTED);
    let hoped = ways.iter().filter(|way| way.sound() && way.method != Method::Remake).max_by(|a, b| a.suits.total_cmp(&b.suits));
    match (ready, hoped) {
        (Some(way), _) if gap.decides && way.method != Method::Remake => Decision::Take(way.method),
        // A new part is the answer only when no other way has a fair chance of suiting.
        (_, Some(way)) if way.suits >= 1.0 - CHANCE_WANTED || !gap.decides => measure(gap, blown, way),
        _ => Decision::Take(Method::Remake),
    }
}

/// The measurement that would let a way be taken.
fn measure(gap: &MeasuredGap, blown: &Blown, way: &Way) -> Decision {
    let room = (gap.gap - way.window.0).min(way.window.1 - gap.gap).abs();
    let errors = |part: &Measured| crate::fit::uncertainty(&mut crate::Silent, part).map_or(f64::INFINITY, |u| u.get::<micrometer>());
    let bore_worse = errors(&blown.bore) >= errors(&blown.shaft);
    let (part, by) = if bore_worse { (Feature::Hole, Instrument::BoreMicrometer) } else { (Feature::Shaft, Instrument::Micrometer) };
    Decision::Measure { part, by, until: (room / ONE_SIDED).min(gap.uncertainty), towards: way.method }
}
