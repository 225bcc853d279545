//! Acute toxicity: the estimate of a mixture from those of its parts.

use reference::hazard::HazardClass as H;
use reference::substance::{Route, State};

use super::{Decided, Sieve, own};
use crate::air::stays;
use crate::label::Part;

/// One way in: the four classes with the greatest estimate of each, and the estimate that stands for a class where no value is known.
struct Way {
    route: Route,
    words: &'static str,
    unit: &'static str,
    classes: [H; 4],
    limits: [f64; 4],
    points: [f64; 4],
}

const INHALATION: [H; 4] = [H::AcuteTox1Inhalation, H::AcuteTox2Inhalation, H::AcuteTox3Inhalation, H::AcuteTox4Inhalation];

/// UN GHS chapter 3.1, tables 3.1.1 and 3.1.2; *from memory*.
const WAYS: [Way; 5] = [
    Way {
        route: Route::Oral,
        words: "swallowed",
        unit: "mg/kg",
        classes: [H::AcuteTox1Oral, H::AcuteTox2Oral, H::AcuteTox3Oral, H::AcuteTox4Oral],
        limits: [5.0, 50.0, 300.0, 2000.0],
        points: [0.5, 5.0, 100.0, 500.0],
    },
    Way {
        route: Route::Dermal,
        words: "through the skin",
        unit: "mg/kg",
        classes: [H::AcuteTox1Dermal, H::AcuteTox2Dermal, H::AcuteTox3Dermal, H::AcuteTox4Dermal],
        limits: [50.0, 200.0, 1000.0, 2000.0],
        points: [5.0, 50.0, 300.0, 1100.0],
    },
    Way {
        route: Route::Gas,
        words: "breathed as gas",
        unit: "ppm",
        classes: INHALATION,
        limits: [100.0, 500.0, 2500.0, 20_000.0],
        points: [10.0, 100.0, 700.0, 4500.0],
    },
    Way {
        route: Route::Vapour,
        words: "breathed as vapour",
        unit: "mg/L",
        classes: INHALATION,
        limits: [0.5, 2.0, 10.0, 20.0],
        points: [0.05, 0.5, 3.0, 11.0],
    },
    Way {
        route: Route::Dust,
        words: "breathed as dust or mist",
        unit: "mg/L",
        classes: INHALATION,
        limits: [0.05, 0.5, 1.0, 5.0],
        points: [0.005, 0.05, 0.5, 1.5],
    },
];

/// As warm as a workroom gets.
const WARM_CELSIUS: f64 = 30.0;

/// From this share on what is not known counts, in percent.
const UNKNOWN: f64 = 10.0;

impl Way {
    /// The estimate of a substance; none where it is not poisonous this way.
    fn estimate(&self, part: &Part<'_>) -> Option<f64> {
        let substance = part.substance;
        let known = |route| substance.toxicity.iter().find(|known| known.route == route).map(|known| known.estimate);
        if let Some(estimate) = known(self.route) {
            return (estimate <= self.limits[3]).then_some(estimate);
        }
        // A class of breathing does not say of what: a value for one way says it, otherwise the state does.
        let breathed = self.classes == INHALATION;
        let elsewhere = [Route::Gas, Route::Vapour, Route::Dust].into_iter().any(|route| known(route).is_some());
        let this_way = match substance.state {
            State::Gas => self.route == Route::Gas,
            // A liquid that does not evaporate where it is handled is breathed as the mist it is made into.
            State::Liquid if stays(substance, WARM_CELSIUS) => self.route == Route::Dust,
            State::Liquid => self.route == Route::Vapour,
            State::Solid => self.route == Route::Dust,
        };
        if breathed && (elsewhere || !this_way) {
            return None;
        }
        let of_class = |(class, point): (&H, &f64)| substance.hazards.iter().any(|hazard| hazard.class == *class).then_some(*point);
        self.classes.iter().zip(&self.points).find_map(of_class)
    }
}

impl Sieve<'_, '_> {
    pub(super) fn poison(&mut self) {
        let unknown = self.mixture.unknown * 100.0;
        let counted = if unknown > UNKNOWN { 100.0 - unknown } else { 100.0 };
        for way in &WAYS {
            let sum: f64 = self.mixture.parts.iter().filter_map(|part| Some(part.percent() / way.estimate(part)?)).sum();
            if sum <= 0.0 {
                continue;
            }
            let value = counted / sum;
            let reached = way.limits.iter().position(|limit| value <= limit * (1.0 + 1e-9));
            if let Some(place) = reached {
                let decided = Decided { value, cut_off: way.limits[place], unit: way.unit };
                self.find(own(way.classes[place]), format!("acute toxicity estimate {}:", way.words), Some(decided));
            }
        }
    }
}
