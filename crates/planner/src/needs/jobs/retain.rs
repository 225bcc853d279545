//! Retaining a cylindrical joint with an adhesive: a bush, a bearing, a worn seat.
//!
//! A press that holds by itself gets none. Otherwise the class follows from the gap, the heat and whether it must come off again; its
//! strength, cut down for gap, metal, finish, heat, length and loading and divided by the safety, must carry the load.

#![expect(non_snake_case, reason = "symbols match the source")]

mod fit;
pub(super) mod metals;
mod words;

use formulas::bond::{BondJoint, Bonded, Heat, Loading, Retainer, RetainerKind, bond_holding, bond_quantity, cure_time};
use formulas::math::{pow, sqrt};
use formulas::sources::{COMMON_PRACTICE, DEFINITION};
use formulas::working::{Recorder, Silent};
use formulas::{FormulaError, given, step};
use reference::fluid::Bond;
use shop::{Given, Kind};
use units::{Force, Length, Pressure, Quantity, System, Temperature, Torque, in_celsius, show};

use super::common::{Curing, cure, degrease};
use super::lock::activate;
use super::{Bench, Step, Task};
use crate::demand::{Test, celsius};
use crate::need::{Consequence, Dose};
use crate::needs::Complaint;
use fit::Fit;
use metals::{bond_metal, bond_metals};

const DIAMETER: Given<Length> = Given::quantity("diameter", "12 mm", "common-practice", "diameter of the shaft or pin");
const HOLE: Given<Length> = Given::quantity("hole", "0 mm", "common-practice", "diameter of the hole where you measured it; the gap is then worked out");
const BY: Given<&'static str> = Given::choice(
    "by",
    &["telescopic gauge", "bore micrometer", "calliper"],
    "telescopic gauge",
    "common-practice",
    "what the hole was measured with; the shaft by micrometer, or by the same calliper",
);
const GAP: Given<Length> =
    Given::quantity("gap", "0.04 mm", "common-practice", "hole less shaft, both by diameter, where the hole is not given");
const LENGTH: Given<Length> = Given::quantity("length", "12 mm", "common-practice", "length of the joint");
const OUTSIDE: Given<Length> = Given::quantity("outside", "0 mm", "common-practice", "outside diameter of the hub, for a press fit; twice the shaft where it is not given");
const BORE: Given<Length> = Given::quantity("bore", "0 mm", "common-practice", "bore of a hollow shaft or bush, for a press fit");
const METALS: Given<Vec<String>> = Given::materials("metals", "mild-steel", "common-practice", "what shaft and hub are made of, the shaft first");
const ROUGHNESS: Given<Length> = Given::quantity("roughness", "1.6 µm", "common-practice", "finish of the rougher face, Ra");
const LOAD: Given<Force> = Given::quantity("load", "0 N", "common-practice", "load along the joint, where it is known");
const TORQUE: Given<Torque> = Given::quantity("torque", "0 N m", "common-practice", "torque round the joint, where it is known");
const LOADING: Given<&'static str> = Given::choice(
    "loading",
    &["steady", "pulsating", "reversing"],
    "steady",
    "common-practice",
    "whether the load stands still, comes and goes, or turns about and knocks",
);
const PREPARED: Given<bool> =
    Given::flag("prepared", "false", "common-practice", "whether the faces are degreased and roughened and both were measured");
const TEMPERATURE: Given<Temperature> = Given::quantity("temperature", "40 °C", "common-practice", "hottest the joint gets");
const RUN_OUT: Given<Length> = Given::quantity("run_out", "0.5 mm", "common-practice", "the run-out that can be borne");
const REMOVABLE: Given<bool> = Given::flag("removable", "false", "common-practice", "whether it must come off again");
const PIECES: Given<f64> = Given::number("pieces", "1", "common-practice", "how many joints each time");

pub(super) static KIND: Kind = Kind {
    name: "retain",
    about: "holding a bush, bearing or pin in its seat with an adhesive, or by its press alone",
    fields: &[
        DIAMETER.field(),
        HOLE.field(),
        BY.field(),
        GAP.field(),
        LENGTH.field(),
        OUTSIDE.field(),
        BORE.field(),
        METALS.field(),
        ROUGHNESS.field(),
        LOAD.field(),
        TORQUE.field(),
        LOADING.field(),
        PREPARED.field(),
        TEMPERATURE.field(),
        RUN_OUT.field(),
        REMOVABLE.field(),
        PIECES.field(),
    ],
};

/// The joint as the job tells of it.
struct Asked<'a> {
    diameter: Length,
    length: Length,
    metals: &'a [String],
    roughness: Length,
    load: Force,
    torque: Torque,
    loading: Loading,
    hottest: Temperature,
    /// Beyond what a standard compound is used for.
    hot: bool,
    removable: bool,
    /// Factor of safety of a bond.
    safety: f64,
    /// Factor of safety of a press.
    press_safety: f64,
}

impl<'a> Asked<'a> {
    fn of(bench: &'a Bench<'_>) -> Self {
        /// Standard compounds have lost half their strength here; *common practice*.
        const HOT_C: f64 = 120.0;
        let answers = bench.answers();
        let temperature: Temperature = answers.quantity(&TEMPERATURE);
        let hottest = if temperature > bench.room.hottest { temperature } else { bench.room.hottest };
        let loading = match answers.word(&LOADING) {
            "pulsating" => Loading::Pulsating,
            "reversing" => Loading::Reversing,
            _ => Loading::Steady,
        };
        Self {
            diameter: answers.quantity(&DIAMETER),
            length: answers.quantity(&LENGTH),
            metals: answers.words(&METALS),
            roughness: answers.quantity(&ROUGHNESS),
            load: answers.quantity(&LOAD),
            torque: answers.quantity(&TORQUE),
            loading,
            hottest,
            hot: in_celsius(hottest) > HOT_C,
            removable: answers.flag(&REMOVABLE),
            // Two where both parts were prepared and measured, three otherwise; *common practice*.
            safety: if answers.flag(&PREPARED) { 2.0 } else { 3.0 },
            press_safety: if loading == Loading::Steady { 1.5 } else { 2.0 },
        }
    }

    fn loaded(&self) -> bool {
        self.load.base() > 0.0 || self.torque.base() > 0.0
    }

    fn joint(&self, bench: &Bench<'_>, gap: Length) -> BondJoint {
        let [hub, shaft] = bond_metals(bench, self.metals);
        BondJoint {
            diameter: self.diameter,
            length: self.length,
            gap,
            hub,
            shaft,
            roughness: self.roughness,
            service: self.hottest,
            loading: self.loading,
        }
    }
}

pub(super) fn tasks<R: Recorder>(bench: &Bench<'_>, r: &mut R) -> Result<Vec<Task>, Complaint> {
    let answers = bench.answers();
    let (asked, pieces) = (Asked::of(bench), answers.number(&PIECES));
    let hole: Length = answers.quantity(&HOLE);
    let measured = (hole.base() > 0.0).then_some(hole);
    let gap = match measured {
        Some(hole) => difference(r, asked.diameter, hole, bench.shop.units)?,
        None => answers.quantity(&GAP),
    };
    let fit = match measured {
        Some(hole) => fit::judge(r, bench, &asked, hole, gap)?,
        None => Fit::Gap,
    };
    let gap = if gap.base() > 0.0 { gap } else { Length::from_base(0.0) };
    let task = |steps| vec![Task { consequence: Consequence::Spoils, times_a_year: bench.times_a_year(), steps }];
    let (case, minds) = match fit {
        Fit::Press(why) => return Ok(task(vec![Step::refused("retain", why)])),
        Fit::Remake(why) => return Ok(task(vec![Step::refused("retain", why).spares(asked.metals)])),
        Fit::Bond { case, minds } => (case, minds),
        Fit::Gap => (case(&asked, gap), Vec::new()),
    };
    let activated = gap.base() > WIDE_M || bench.any_is(asked.metals, "passive-metals");
    let case = if spared_by_heat_class(bench, &asked, gap, case, activated)? { "retain-hot" } else { case };
    let row = bench.locking(case)?;
    if row.ranked.is_empty() {
        return Ok(task(vec![Step::refused("retain", row.why.clone()).spares(asked.metals)]));
    }
    let mut steps = vec![degrease(bench, asked.metals, Dose::ml(3.0 * pieces), true)];
    if activated {
        steps.push(activate(pieces));
    }
    let mut ranked = row.ranked.clone();
    // The general compound serves a press as it serves a slip, only it is thick for so close a fit.
    if case == "retain-press" {
        ranked.push("retainer-general".to_owned());
    }
    let amount = bond_quantity(r, asked.diameter, asked.length, gap)?;
    let step = Step::new("retain", "a ring on both leading edges, put together with a twist, wipe; nothing near a bearing's balls")
        .ranked(&ranked, row.why.clone(), row.source.as_str())
        .demand("bridges the gap", Test::Gap { gap }, "beyond its gap it does not cure", "petrie-adhesives")
        .demand("stands the heat", Test::Stands { hottest: asked.hottest }, "a cured retainer softens with heat", "iso-10123")
        .spares(asked.metals)
        .dose(Dose::volumes(amount.map(|each| pieces * each)));
    let step = minds.into_iter().fold(step, |step, mind| step.mind(mind, "common-practice"));
    let Some((compound, bond)) = compound(bench, row.ranked.first().map_or("", String::as_str)) else {
        return Ok(task(vec![step]));
    };
    let held = held(r, bench, &asked, &compound, gap)?;
    let left = left_by_activator(r, bench, &asked, gap, activated)?;
    let step = match held {
        // Together with a press a bond is never alone in carrying the load.
        _ if !asked.loaded() || case == "retain-press" => step,
        held => load_demand(r, step, &asked, &compound, held.as_ref(), left)?,
    };
    // What a bond alone would hold says nothing of one in a press: the measurement's own words do.
    let alone = held.as_ref().filter(|_| case != "retain-press" || measured.is_none()).map(|held| (held, left));
    let step = words::minded(r, step, bench, &asked, gap, &amount, alone, &compound)?;
    let own = (case == "retain-worn").then_some(bond);
    steps.push(cure(r, step, bench, &Curing { gap, metals: bond_metals(bench, asked.metals), activated, own })?);
    Ok(task(steps))
}

/// From here a paste fills the gap, and it wants the activator.
const WIDE_M: f64 = 0.15e-3;

/// Hole less shaft.
fn difference<R: Recorder>(r: &mut R, shaft: Length, hole: Length, units: System) -> Result<Length, Complaint> {
    /// More interference than this share of the diameter stays elastic in no metal; *common practice*.
    const TIGHTEST: f64 = 0.01;
    given!(r, D["mm"] = hole.base() * 1e3, "hole");
    given!(r, d["mm"] = shaft.base() * 1e3, "shaft");
    step!(r, c["mm"] = D - d, DEFINITION);
    if c < -TIGHTEST * d {
        let (hole, shaft) = (show(hole, units), show(shaft, units));
        return Err(Complaint::Contradiction {
            field: "hole",
            what: format!("a hole of {hole} does not go over a shaft of {shaft}"),
            mend: "Check that the two were not exchanged.",
        });
    }
    Ok(Length::from_base(c * 1e-3))
}

/// The case of the locking table.
fn case(asked: &Asked<'_>, gap: Length) -> &'static str {
    /// Where a table's limit is met, measuring is not finer than this.
    const EXACT_M: f64 = 1e-9;
    let within = |limit_mm: f64| gap.base() <= limit_mm * 1e-3 + EXACT_M;
    match () {
        () if !within(0.25) => "retain-too-loose",
        () if asked.removable => "retain-removable",
        () if asked.hot => "retain-hot",
        () if within(0.02) => "retain-press",
        () if within(0.05) => "retain-slip-small",
        () if within(0.15) => "retain-slip",
        () => "retain-worn",
    }
}

/// The compound of a class, as the data describe the first fluid of it.
fn compound<'a>(bench: &'a Bench<'_>, class: &'a str) -> Option<(Retainer, &'a Bond)> {
    let bond = bench.reference.fluids_of(class).find_map(|fluid| fluid.bond.as_ref())?;
    let heat = if bond.hottest > celsius(Heat::Standard.limits().1) { Heat::HighTemperature } else { Heat::Standard };
    Some((Retainer { strength: bond.strength?, widest_gap: bond.gap?, heat }, bond))
}

/// What a compound holds in the joint; nothing beyond its gap or its heat, or on a material on which it is not known to hold.
fn held<R: Recorder>(r: &mut R, bench: &Bench<'_>, asked: &Asked<'_>, compound: &Retainer, gap: Length) -> Result<Option<Bonded>, Complaint> {
    if asked.metals.iter().any(|key| bond_metal(bench.reference, key).is_none()) {
        return Ok(None);
    }
    match bond_holding(r, compound, &asked.joint(bench, gap), asked.safety) {
        Ok(held) => Ok(Some(held)),
        Err(FormulaError::OutOfRange { .. }) => Ok(None),
        Err(error) => Err(error.into()),
    }
}

/// The share of the strength that an activator leaves at the least.
fn left_by_activator<R: Recorder>(r: &mut R, bench: &Bench<'_>, asked: &Asked<'_>, gap: Length, activated: bool) -> Result<f64, Complaint> {
    let cure = cure_time(&mut Silent, celsius(22.0), gap, bond_metals(bench, asked.metals), activated)?;
    given!(r, f_a [] = cure.strength.low, "share of the strength an activator leaves; 1 without one");
    Ok(f_a)
}

/// Whether only the compound made for heat still carries the load at this heat.
fn spared_by_heat_class(bench: &Bench<'_>, asked: &Asked<'_>, gap: Length, case: &str, activated: bool) -> Result<bool, Complaint> {
    if !asked.loaded() || !["retain-slip-small", "retain-slip"].contains(&case) {
        return Ok(false);
    }
    let left = left_by_activator(&mut Silent, bench, asked, gap, activated)?;
    let carries = |class: &str| {
        let Some((compound, _)) = compound(bench, class) else { return Ok(false) };
        let held = held(&mut Silent, bench, asked, &compound, gap)?;
        Ok::<bool, Complaint>(held.is_some_and(|held| fit::share_of(asked.load, asked.torque, (held.axial.low, held.torque.low)) <= left))
    };
    let row = bench.locking(case)?;
    let standard = row.ranked.iter().filter(|class| *class != "retainer-high-temperature");
    for class in standard {
        if carries(class)? {
            return Ok(false);
        }
    }
    carries("retainer-high-temperature")
}

/// The demand that the compound carries the load: the stress it asks, and what is left of a class's strength.
fn load_demand<R: Recorder>(
    r: &mut R,
    step: Step,
    asked: &Asked<'_>,
    compound: &Retainer,
    held: Option<&Bonded>,
    left: f64,
) -> Result<Step, Complaint> {
    // The stress is the same whatever compound carries it; a clean joint tells it where this compound holds nothing.
    let clean = BondJoint {
        diameter: asked.diameter,
        length: asked.length,
        gap: Length::from_base(0.0),
        hub: formulas::bond::BondMetal::Steel,
        shaft: formulas::bond::BondMetal::Steel,
        roughness: Length::from_base(1.6e-6),
        service: celsius(22.0),
        loading: Loading::Steady,
    };
    let general = RetainerKind::General.retainer();
    let strong = formulas::bond::bond_strength(&mut Silent, &general, &clean, 1.0)?.low;
    let whole = bond_holding(&mut Silent, &general, &clean, 1.0)?;
    given!(r, F["N"] = asked.load.base(), "load along");
    given!(r, T["N·m"] = asked.torque.base(), "torque round");
    given!(r, F_1["N"] = whole.axial.low.base() / strong.base() * 1e6, "what a stress of 1 MPa holds along");
    given!(r, T_1["N·m"] = whole.torque.low.base() / strong.base() * 1e6, "what a stress of 1 MPa holds round");
    step!(r, tau["MPa"] = sqrt(pow(F / F_1, 2.0) + pow(T / T_1, 2.0)), DEFINITION);
    let share = held.map_or(0.0, |held| held.axial.low.base() / (F_1 * compound.strength.base() * 1e-6));
    given!(r, f [] = share, "share left of the class strength for gap, metal, finish, heat, length, loading and safety");
    given!(r, f_a [] = left, "share the activator leaves");
    step!(r, f_d [] = f * f_a, COMMON_PRACTICE);
    Ok(step.demand(
        "carries the load",
        Test::Strength { needed: Pressure::from_base(tau * 1e6), factor: f_d },
        format!("of the strength on a steel pin {:.0} % is left for gap, metal, finish, heat, length, loading and safety", f_d * 100.0),
        "iso-10123",
    ))
}
