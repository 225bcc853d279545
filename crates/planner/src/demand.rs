//! One testable requirement of a need, and how a fluid is held against it.

use std::borrow::Cow;

use formulas::viscosity::{Measured, viscosity_at};
use formulas::working::Silent;
use handling::bars::Beside;
use reference::{Compatibility, Fluid, Form, Reference, Trait, nlgi};
pub(crate) use units::celsius;
use units::{KinematicViscosity, Length, Pressure, Quantity, System, Temperature, TemperatureDifference, show};

use crate::surroundings::{Spent, beside, beside_words};
use crate::verdict::Grade;

/// A requirement, judged on its own.
#[derive(Debug, Clone)]
pub struct Demand {
    /// What it is about, in a few words.
    pub what: &'static str,
    /// What is asked.
    pub test: Test,
    /// Why.
    pub why: Cow<'static, str>,
    /// Bibliography key of the reason.
    pub source: &'static str,
}

/// What can be asked of a fluid.
#[derive(Debug, Clone)]
#[non_exhaustive]
pub enum Test {
    /// It belongs to one of these classes (or is one of these fluids).
    Class {
        /// Right.
        right: Vec<Cow<'static, str>>,
        /// Will do.
        will_do: Vec<Cow<'static, str>>,
    },
    /// It runs, stays or dries, as the place wants.
    Form {
        /// What an oil is here.
        oil: Grade,
        /// What a grease is here.
        grease: Grade,
        /// What a dry film is here.
        dry: Grade,
    },
    /// An oil, or a grease's base oil, no thinner than this.
    NotThinner {
        /// Temperature of the place.
        at: Temperature,
        /// From here it is right.
        right: KinematicViscosity,
        /// From here it will do.
        will_do: KinematicViscosity,
        /// What lies below: wrong, or harmful where metal would touch.
        else_grade: Grade,
    },
    /// An oil, or a grease's base oil, no thinner than this, or with one of these in it.
    ThickOrWith {
        /// Temperature of the place.
        at: Temperature,
        /// From here nothing need be in it.
        thick: KinematicViscosity,
        /// What must be in it if it is thinner; without, it is wrong.
        traits: &'static [Trait],
    },
    /// An oil, or a grease's base oil, no thicker than this.
    NotThicker {
        /// Temperature of the place.
        at: Temperature,
        /// Up to here it is right.
        right: KinematicViscosity,
        /// Up to here it will do.
        will_do: KinematicViscosity,
        /// What lies above.
        else_grade: Grade,
    },
    /// An oil that still reaches the place on a cold start.
    Flows {
        /// Coldest start.
        at: Temperature,
        /// What the feed still passes.
        limit: KinematicViscosity,
    },
    /// A grease of this stiffness.
    Consistency {
        /// Softest that is right.
        softest: i8,
        /// Stiffest that is right.
        stiffest: i8,
    },
    /// Stands the heat of the place.
    Stands {
        /// Hottest it gets.
        hottest: Temperature,
    },
    /// A flash point this far above the heat of the place.
    Flash {
        /// Hottest it gets.
        hottest: Temperature,
        /// Margin wanted.
        margin: TemperatureDifference,
    },
    /// Contains none of these.
    Without {
        /// The unwanted.
        traits: &'static [Trait],
        /// What containing one amounts to.
        else_grade: Grade,
    },
    /// Contains one of these.
    With {
        /// The wanted.
        traits: &'static [Trait],
        /// What containing none amounts to.
        else_grade: Grade,
    },
    /// Leaves the materials it touches alone.
    Spares {
        /// Materials by key.
        materials: Vec<String>,
        /// Whether it stays there or is cleaned off soon.
        stays: bool,
    },
    /// May meet the grease that is in the place now.
    Meets {
        /// The thickener of what is in it.
        thickener: String,
    },
    /// Bridges this gap.
    Gap {
        /// Largest gap, diametral for round joints.
        gap: Length,
    },
    /// Carries this shear stress after every derating.
    Strength {
        /// Stress to carry.
        needed: Pressure,
        /// What the class strength is multiplied by here.
        factor: f64,
    },
    /// What of it gets into the air of the room may be breathed, and is far from burning.
    SafeAir(Spent),
    /// Nothing that is beside the job speaks against it.
    Beside(Beside),
}

/// What a demand found.
#[derive(Debug, Clone)]
pub struct Judged {
    /// How it compares.
    pub grade: Grade,
    /// What the fluid gives.
    pub given: Gives,
}

/// What a fluid gives, kept as numbers until somebody reads it.
#[derive(Debug, Clone)]
pub enum Gives {
    /// Words.
    Text(Cow<'static, str>),
    /// A viscosity at a temperature.
    Viscosity(KinematicViscosity, Temperature),
    /// A temperature.
    Temperature(Temperature),
    /// The temperature at which it no longer flows.
    Pour(Temperature),
    /// A length.
    Length(Length),
    /// A stress.
    Pressure(Pressure),
    /// A share of what may be breathed.
    Air(f64),
}

impl Gives {
    /// In words.
    #[must_use]
    pub fn words(&self, units: System) -> String {
        match self {
            Self::Text(text) => text.to_string(),
            Self::Viscosity(nu, at) => format!("{} at {}", show(*nu, units), show(*at, units)),
            Self::Temperature(at) => show(*at, units),
            Self::Pour(at) => format!("stiffens at {}", show(*at, units)),
            Self::Length(length) => show(*length, units),
            Self::Pressure(pressure) => show(*pressure, units),
            Self::Air(share) => format!("{:.0} % of what may be breathed", share * 100.0),
        }
    }
}

fn text(words: impl Into<Cow<'static, str>>) -> Gives {
    Gives::Text(words.into())
}

impl Demand {
    /// Whether the demand can find a fluid harmful, not just wrong.
    #[must_use]
    pub fn may_find_harm(&self) -> bool {
        match &self.test {
            Test::Form { oil, grease, dry } => [oil, grease, dry].contains(&&Grade::Harmful),
            Test::NotThinner { else_grade, .. }
            | Test::NotThicker { else_grade, .. }
            | Test::Without { else_grade, .. }
            | Test::With { else_grade, .. } => *else_grade == Grade::Harmful,
            Test::SafeAir(spent) => spent.room.flames,
            Test::Spares { .. } | Test::Flash { .. } | Test::Beside(_) => true,
            _ => false,
        }
    }

    /// Holds a fluid against the demand; `None` where it does not concern this fluid.
    #[must_use]
    pub fn judge(&self, fluid: &Fluid, reference: &Reference) -> Option<Judged> {
        let judged = |grade, given| Some(Judged { grade, given });
        match &self.test {
            Test::Class { right, will_do } => judged(class_grade(fluid, right, will_do), text(reference.class_name(fluid))),
            Test::Form { oil, grease, dry } => match fluid.form {
                Form::Oil => judged(*oil, text("an oil")),
                Form::Grease => judged(*grease, text("a grease")),
                Form::Dry => judged(*dry, text("a dry film")),
                _ => None,
            },
            Test::NotThinner { at, right, will_do, else_grade } => {
                let nu = viscosity(fluid, *at)?;
                judged(step(nu >= *right, nu >= *will_do, *else_grade), Gives::Viscosity(nu, *at))
            }
            Test::ThickOrWith { at, thick, traits } => {
                let nu = viscosity(fluid, *at)?;
                match traits.iter().find(|wanted| fluid.traits.contains(wanted)) {
                    Some(wanted) if nu < *thick => judged(Grade::Right, text(format!("has {}", wanted.words()))),
                    _ => judged(step(nu >= *thick, false, Grade::Wrong), Gives::Viscosity(nu, *at)),
                }
            }
            Test::NotThicker { at, right, will_do, else_grade } => {
                let nu = viscosity(fluid, *at)?;
                judged(step(nu <= *right, nu <= *will_do, *else_grade), Gives::Viscosity(nu, *at))
            }
            Test::Flows { at, limit } => flows(fluid, *at, *limit),
            Test::Consistency { softest, stiffest } => {
                let grease = fluid.grease.as_ref()?;
                let (consistency, soft, stiff) = (grease.consistency, *softest, *stiffest);
                let grade = step((soft..=stiff).contains(&consistency), (soft - 1..=stiff + 1).contains(&consistency), Grade::Wrong);
                judged(grade, text(nlgi(consistency)))
            }
            Test::Stands { hottest } => {
                let limit = fluid.hottest_service().or_else(|| oil_limit(fluid))?;
                judged(step(limit >= *hottest, false, Grade::Wrong), Gives::Temperature(limit))
            }
            Test::Flash { hottest, margin } => {
                /// So much of the margin will do; *common practice, no source*.
                const WILL_DO: f64 = 0.5;
                let flash = fluid.flash.as_ref()?.value;
                let over = flash.base() - hottest.base();
                judged(step(over >= margin.base(), over >= WILL_DO * margin.base(), Grade::Harmful), Gives::Temperature(flash))
            }
            Test::Without { traits, else_grade } => {
                let found = traits.iter().find(|unwanted| fluid.traits.contains(unwanted));
                found.map_or_else(
                    || judged(Grade::Right, text("none")),
                    |unwanted| judged(*else_grade, text(format!("has {}", unwanted.words()))),
                )
            }
            Test::With { traits, else_grade } => {
                let found = traits.iter().find(|wanted| fluid.traits.contains(wanted));
                found.map_or_else(
                    || judged(*else_grade, text("none")),
                    |wanted| judged(Grade::Right, text(format!("has {}", wanted.words()))),
                )
            }
            Test::Spares { materials, stays } => spares(fluid, materials, *stays, reference),
            Test::Meets { thickener } => {
                let own = &fluid.grease.as_ref()?.thickener;
                let (grade, words) = match reference.compatibility(own, thickener) {
                    Compatibility::Compatible => (Grade::Right, "may be put on top of it"),
                    Compatibility::Borderline => (Grade::WillDo, "only after the old grease is pressed out"),
                    Compatibility::Incompatible => (Grade::Wrong, "thickeners that spoil each other"),
                };
                judged(grade, text(words))
            }
            Test::Gap { gap } => {
                let bridged = fluid.bond.as_ref()?.gap?;
                judged(step(bridged >= *gap, false, Grade::Wrong), Gives::Length(bridged))
            }
            Test::Strength { needed, factor } => {
                let carries = fluid.bond.as_ref()?.strength? * *factor;
                judged(step(carries >= *needed, false, Grade::Wrong), Gives::Pressure(carries))
            }
            Test::SafeAir(spent) => spent.judge(fluid, reference),
            Test::Beside(facts) => Some(beside(fluid, *facts, reference)),
        }
    }

    /// What is asked, in words.
    #[must_use]
    pub fn asked(&self, reference: &Reference, units: System) -> String {
        match &self.test {
            Test::Class { right, will_do } => {
                let names = |words: &[Cow<'static, str>]| words.iter().map(|word| reference.name_of(word)).collect::<Vec<_>>().join(", ");
                if will_do.is_empty() { names(right) } else { format!("{}; will do: {}", names(right), names(will_do)) }
            }
            Test::Form { oil, grease, dry } => {
                format!("oil {}, grease {}, dry film {}", oil.word(), grease.word(), dry.word())
            }
            Test::NotThinner { at, right, will_do, else_grade } => {
                let also = if will_do < right { still(*else_grade, "from", *will_do, units) } else { String::new() };
                format!("at least {} at {}{also}", show(*right, units), show(*at, units))
            }
            Test::ThickOrWith { at, thick, traits } => {
                format!("at least {} at {}, or {} in it", show(*thick, units), show(*at, units), listed(traits, "or"))
            }
            Test::NotThicker { at, right, will_do, else_grade } => {
                let also = if will_do > right { still(*else_grade, "to", *will_do, units) } else { String::new() };
                format!("at most {} at {}{also}", show(*right, units), show(*at, units))
            }
            Test::Flows { at, limit } => format!("at most {} on a start at {}", show(*limit, units), show(*at, units)),
            Test::Consistency { softest, stiffest } if softest == stiffest => nlgi(*softest),
            Test::Consistency { softest, stiffest } => {
                format!("{} to {}", nlgi(*softest), nlgi(*stiffest))
            }
            Test::Stands { hottest } => format!("stands {}", show(*hottest, units)),
            Test::Flash { hottest, margin } => {
                format!("flash point {} or more above {}", show(*margin, units), show(*hottest, units))
            }
            Test::Without { traits, .. } => format!("no {}", listed(traits, "or")),
            Test::With { traits, .. } => listed(traits, "or"),
            Test::Spares { materials, .. } => {
                let names: Vec<String> = materials.iter().map(|key| reference.name_of(key)).collect();
                format!("safe on {}", names.join(", "))
            }
            Test::Meets { thickener } => format!("a grease that may meet one thickened with {}", reference.thickener_name(thickener)),
            Test::Gap { gap } => format!("bridges {}", show(*gap, units)),
            Test::Strength { needed, .. } => format!("carries {}", show(*needed, units)),
            Test::SafeAir(spent) => spent.asked(units),
            Test::Beside(facts) => beside_words(*facts),
        }
    }
}

/// The fluid's own key decides first, then its classes, the main one before the others.
fn class_grade(fluid: &Fluid, right: &[Cow<'static, str>], will_do: &[Cow<'static, str>]) -> Grade {
    let grade_of = |name: &String| {
        let named = |words: &[Cow<'static, str>]| words.iter().any(|word| word == name);
        named(right).then_some(Grade::Right).or_else(|| named(will_do).then_some(Grade::WillDo))
    };
    std::iter::once(&fluid.key).chain(&fluid.classes).find_map(grade_of).unwrap_or(Grade::Wrong)
}

fn step(right: bool, will_do: bool, otherwise: Grade) -> Grade {
    if right {
        Grade::Right
    } else if will_do {
        Grade::WillDo
    } else {
        otherwise
    }
}

fn listed(traits: &[Trait], joint: &str) -> String {
    let words: Vec<&str> = traits.iter().map(|one| one.words()).collect();
    match words.split_last() {
        Some((last, rest)) if !rest.is_empty() => format!("{} {joint} {last}", rest.join(", ")),
        _ => words.concat(),
    }
}

/// The viscosity of an oil, or of a grease's base oil, at a temperature.
fn viscosity(fluid: &Fluid, at: Temperature) -> Option<KinematicViscosity> {
    let oil = fluid.oil.as_ref()?;
    viscosity_at(&mut Silent, Measured::at_40(oil.viscosity_40), Measured::at_100(oil.viscosity_100?), at).ok()
}

/// Where it will do still, unless it will do everywhere.
fn still(else_grade: Grade, ends: &str, will_do: KinematicViscosity, units: System) -> String {
    if else_grade.serves() { String::new() } else { format!("; will do {ends} {}", show(will_do, units)) }
}

/// ISO 3448 lets an oil's viscosity at 40 °C lie 10 % either side of its grade.
pub(crate) const GRADE_BAND: f64 = 1.1;

/// Whether an oil still gets there on a cold start: above its pour point with 10 K to spare, and thin enough for the feed.
fn flows(fluid: &Fluid, at: Temperature, limit: KinematicViscosity) -> Option<Judged> {
    /// *Common practice, no source.*
    const SPARE_ABOVE_POUR_K: f64 = 10.0;
    /// A feed passes half as much of an oil twice as thick, as flow through a fine way goes: slow, but it arrives. That twice will still
    /// do is *common practice, no source*.
    const SLOW: f64 = 2.0;
    if fluid.form != Form::Oil {
        return None;
    }
    let pour = fluid.oil.as_ref()?.pour;
    if at.base() < pour.base() + SPARE_ABOVE_POUR_K {
        return Some(Judged { grade: Grade::Wrong, given: Gives::Pour(pour) });
    }
    let nu = viscosity(fluid, at)?;
    Some(Judged { grade: step(nu <= limit * GRADE_BAND, nu <= limit * SLOW, Grade::Wrong), given: Gives::Viscosity(nu, at) })
}

/// An oil in a film is kept below its flash point with 60 K to spare; *common practice, no source*.
fn oil_limit(fluid: &Fluid) -> Option<Temperature> {
    const SPARE_BELOW_FLASH_K: f64 = 60.0;
    let flash = fluid.flash.as_ref().filter(|_| fluid.form == Form::Oil)?;
    Some(Temperature::from_base(flash.value.base() - SPARE_BELOW_FLASH_K))
}

/// The worst thing a fluid does to the materials it touches.
fn spares(fluid: &Fluid, materials: &[String], stays: bool, reference: &Reference) -> Option<Judged> {
    let mut worst = (Grade::Right, text("harms none of them"));
    for key in materials {
        let Some(material) = reference.material(key) else { continue };
        let names = |listed: &[String]| listed.iter().any(|word| *word == material.key || material.groups.contains(word));
        let (grade, verb) = if names(&fluid.chemistry.attacks) {
            (if stays { Grade::Harmful } else { Grade::Wrong }, "attacks")
        } else if names(&fluid.chemistry.care) {
            (Grade::WillDo, "asks for care with")
        } else {
            continue;
        };
        if grade > worst.0 {
            worst = (grade, text(format!("{verb} {}", material.name)));
        }
    }
    Some(Judged { grade: worst.0, given: worst.1 })
}
